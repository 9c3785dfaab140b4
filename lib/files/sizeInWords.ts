// How large a file is, as people say it. Pure.

/** `740 bytes`, `96 KB`, `3.4 MB`; a KB is 1,000 bytes, as on the boxes that disks come in. */
export function sizeInWords(bytes: number): string {
	if (bytes < 1000) return `${bytes} bytes`;
	if (bytes < 1_000_000) return `${Math.round(bytes / 1000)} KB`;
	return `${(bytes / 1_000_000).toFixed(1)} MB`;
}
