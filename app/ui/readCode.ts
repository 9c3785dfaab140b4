// Reads the code of a label out of a photo, in the browser: no camera permission, no network. The reader is loaded when it
// is first asked for.

/**
 * A photo of a phone is drawn down first, and then looked at four times at most: the whole at two sizes, its middle, where
 * a label is small in the picture, and the whole once more, larger. Each finds codes that the others lose.
 */
const LOOKS = [
	{ share: 1, size: 1000 },
	{ share: 1, size: 600 },
	{ share: 0.5, size: 1000 },
	{ share: 1, size: 1600 },
] as const;
/** Twice the largest look at the middle: more detail than this no look uses. */
const LARGEST = 2000;

/** What the first code that was found in the picture says; null when there is none to be read. */
export async function readCode(file: Blob): Promise<string | null> {
	const [{ default: reader }, photo] = await Promise.all([import("jsqr"), createImageBitmap(file)]);
	const picture = drawnDown(photo, photo.width, photo.height, 1, LARGEST);
	photo.close();
	for (const { share, size } of LOOKS) {
		const drawn = drawnDown(picture, picture.width, picture.height, share, size);
		const pixels = drawn.getContext("2d", { willReadFrequently: true })?.getImageData(0, 0, drawn.width, drawn.height);
		const found = pixels && reader(pixels.data, pixels.width, pixels.height, { inversionAttempts: "dontInvert" });
		if (found?.data) return found.data;
	}
	return null;
}

/** The middle of a picture, so much of it, with its longer side at most so long. */
function drawnDown(picture: CanvasImageSource, wide: number, high: number, share: number, longest: number): HTMLCanvasElement {
	const [width, height] = [wide * share, high * share];
	const scale = Math.min(1, longest / Math.max(width, height));
	const canvas = document.createElement("canvas");
	canvas.width = Math.max(1, Math.round(width * scale));
	canvas.height = Math.max(1, Math.round(height * scale));
	canvas
		.getContext("2d", { willReadFrequently: true })
		?.drawImage(picture, (wide - width) / 2, (high - height) / 2, width, height, 0, 0, canvas.width, canvas.height);
	return canvas;
}
