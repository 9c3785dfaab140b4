// Which files are kept as photos and papers, and how each is handed out again. Pure.

/** Media types that are kept as photos and papers. */
export const PICTURES = ["image/jpeg", "image/png", "image/webp"] as const;
export const PAPERS = ["application/pdf", "text/plain"] as const;
/** A program, a sound, settings: kept for a device, shown as its digest, handed out only to be saved. */
export const ANY_BYTES = "application/octet-stream";

/** Most bytes of one file: a phone's largest photo is below 20 MB, a scanned manual seldom above 40. */
export const MOST_BYTES = 40 * 1024 * 1024;

/** Most pixels of one picture, above any phone's; a small file that claims more is made to fill the memory. */
export const MOST_PIXELS = 120_000_000;

export const isPicture = (mediaType: string): boolean => PICTURES.some((type) => type === mediaType);

export const isPaper = (mediaType: string): boolean => PAPERS.some((type) => type === mediaType);

/** Whether a browser may show it in a page of ours; anything else is only ever saved. */
export const isShown = (mediaType: string): boolean => isPicture(mediaType) || mediaType === "application/pdf";

/** What a phone's file chooser should offer: asking for JPEG makes phones convert their own format. */
export const PICTURE_CHOOSER = PICTURES.join(",");
export const PAPER_CHOOSER = [...PICTURES, ...PAPERS].join(",");
