import { ButtonLink } from "./ui/buttonLink";
import { Empty } from "./ui/empty";
import { PageHead } from "./ui/pageHead";

export const metadata = { title: "Nothing here" };

export default function NotFound() {
	return (
		<>
			<PageHead title="Nothing here" />
			<Empty
				title="There is no such page in this shop"
				action={
					<ButtonLink kind="main" href="/">
						To the shop
					</ButtonLink>
				}
			>
				The address may have been typed wrong, or the tag belongs to another shop. Type the tag into the field at the top: a wrong character
				is named.
			</Empty>
		</>
	);
}
