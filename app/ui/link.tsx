import NextLink from "next/link";
import type { ComponentProps } from "react";

/**
 * A link within the shop. It fetches nothing before it is followed: a page with fifty tags on it would ask the shop's small
 * computer for fifty pages that nobody wants yet.
 */
export function Link(props: Omit<ComponentProps<typeof NextLink>, "prefetch">) {
	return <NextLink {...props} prefetch={false} />;
}
