// Reads the code of a label out of a photo, in the browser: no camera permission, no network. The reader is loaded when it
// is first asked for.

/** A photo of a phone is drawn down to these widths, one after the other: a code that is lost in one is found in another. */
const WIDTHS = [1000, 600, 1600] as const;

/** What the first code that was found in the picture says; null when there is none to be read. */
export async function readCode(file: Blob): Promise<string | null> {
	const [{ default: reader }, picture] = await Promise.all([import("jsqr"), createImageBitmap(file)]);
	try {
		// The whole, then the middle of it: where a label is small in the picture.
		for (const share of [1, 0.5]) {
			for (const width of WIDTHS) {
				const pixels = drawnDown(picture, width, share);
				const found = pixels && reader(pixels.data, pixels.width, pixels.height, { inversionAttempts: "dontInvert" });
				if (found?.data) return found.data;
			}
		}
		return null;
	} finally {
		picture.close();
	}
}

function drawnDown(picture: ImageBitmap, width: number, share: number): ImageData | null {
	const [from, high] = [picture.width * share, picture.height * share];
	const scale = Math.min(1, width / Math.max(from, high));
	const canvas = document.createElement("canvas");
	canvas.width = Math.max(1, Math.round(from * scale));
	canvas.height = Math.max(1, Math.round(high * scale));
	const pen = canvas.getContext("2d", { willReadFrequently: true });
	if (!pen) return null;
	pen.drawImage(picture, (picture.width - from) / 2, (picture.height - high) / 2, from, high, 0, 0, canvas.width, canvas.height);
	return pen.getImageData(0, 0, canvas.width, canvas.height);
}
