// Photos as a phone takes them, made here: a real JPEG, held upright by its note alone, with the place where it was taken.

import { createHash } from "node:crypto";
import sharp from "sharp";
import type { Picked } from "@/tests/support/browserHands";

export type MadePhoto = Picked & { readonly sha: string };

const named = (name: string, buffer: Buffer): MadePhoto => ({
	name,
	mimeType: "image/jpeg",
	buffer,
	sha: createHash("sha256").update(buffer).digest("hex"),
});

/** Lies on its side, 1200 x 900, and says "turn me a quarter to the right"; red in the corner that is then at the top right. Says where it was taken. */
export async function photoOnItsSide(name: string): Promise<MadePhoto> {
	const red = await sharp({ create: { width: 300, height: 300, channels: 3, background: "#d01010" } })
		.png()
		.toBuffer();
	const buffer = await sharp({ create: { width: 1200, height: 900, channels: 3, background: "#d8d0bb" } })
		.composite([{ input: red, left: 0, top: 0 }])
		.withExif({
			IFD0: { Make: "Bench phone" },
			IFD3: { GPSLatitudeRef: "N", GPSLatitude: "52/1 22/1 30/1", GPSLongitudeRef: "E", GPSLongitude: "4/1 53/1 10/1" },
		})
		.withMetadata({ orientation: 6 })
		.jpeg({ quality: 85 })
		.toBuffer();
	return named(name, buffer);
}

export const plainPhoto = async (name: string): Promise<MadePhoto> =>
	named(
		name,
		await sharp({ create: { width: 1000, height: 800, channels: 3, background: "#59625f" } })
			.jpeg()
			.toBuffer(),
	);

/** What can be told of a small picture: its size, whether it says more than it shows, and whether its top right corner is red. */
export async function lookedAt(picture: Buffer) {
	const { width, height, exif, orientation } = await sharp(picture).metadata();
	const corner = await sharp(picture)
		.extract({ left: width - 10, top: 5, width: 5, height: 5 })
		.removeAlpha()
		.raw()
		.toBuffer();
	const [r = 0, g = 0, b = 0] = corner;
	return { upright: height > width, saysMore: exif !== undefined || (orientation ?? 1) !== 1, redCorner: r > 150 && g < 80 && b < 80 };
}
