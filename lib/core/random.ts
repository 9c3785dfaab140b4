// Random numbers that can be repeated. The source is handed in; the same seed gives the same numbers for ever.
// xoshiro128** 1.1 by D. Blackman and S. Vigna (public domain); its state is filled from the seed by splitmix32.

/** Gives the next number, at least 0 and below 1, with 53 random bits. */
export type Random = () => number;

/** Gives so many random bytes. At the edge this is the system's own source. */
export type RandomBytes = (count: number) => Uint8Array;

/** The bare generator: whole numbers from 0 to 2^32 - 1. Requires a state that is not all zeros. */
export function xoshiro128(state: readonly [number, number, number, number]): () => number {
	let [a, b, c, d] = state;
	if ((a | b | c | d) === 0) throw new Error("the state of the generator is all zeros");
	return () => {
		const scrambled = Math.imul(turned(Math.imul(b, 5), 7), 9) >>> 0;
		const shifted = b << 9;
		c ^= a;
		d ^= b;
		b ^= c;
		a ^= d;
		c ^= shifted;
		d = turned(d, 11);
		return scrambled;
	};
}

/** A source that repeats itself: requires a whole number as seed, and gives the same sequence for the same seed. */
export function seededRandom(seed: number): Random {
	const next = seeded(seed);
	return () => ((next() >>> 5) * 0x4000000 + (next() >>> 6)) / 0x20000000000000;
}

/** Bytes that repeat themselves, for fixed ids and salts in tests and in the demo shop. Never for a real key or salt. */
export function seededBytes(seed: number): RandomBytes {
	const next = seeded(seed);
	return (count) => Uint8Array.from({ length: count }, () => next() >>> 24);
}

/** A whole number from 0 to `below` - 1, all equally likely. Requires 0 < below <= 2^32. */
export function wholeBelow(random: Random, below: number): number {
	if (!Number.isSafeInteger(below) || below <= 0 || below > 0x100000000) throw new Error(`no whole number below ${below}`);
	return Math.floor(random() * below);
}

/** The items in a random order; the list given is left as it is. */
export function shuffled<T>(random: Random, items: readonly T[]): T[] {
	const rest = [...items];
	const drawn: T[] = [];
	while (rest.length > 0) drawn.push(...rest.splice(wholeBelow(random, rest.length), 1));
	return drawn;
}

function seeded(seed: number): () => number {
	if (!Number.isSafeInteger(seed)) throw new Error(`a seed is a whole number, not ${seed}`);
	const low = splitmix32(seed | 0);
	const upper = Math.floor(seed / 0x100000000) | 0;
	if (upper === 0) return xoshiro128([low(), low(), low(), low()]);
	// The upper half of a large or negative seed fills half of the state, so that 1 and 2^32 + 1 differ; the first
	// numbers, which show only part of the state, are thrown away.
	const high = splitmix32(upper);
	const next = xoshiro128([low(), low(), high(), high()]);
	for (let thrown = 0; thrown < 20; thrown++) next();
	return next;
}

/** The generator that fills the state of the other one: it never gives four zeros in a row. */
function splitmix32(start: number): () => number {
	let counter = start;
	return () => {
		counter = (counter + 0x9e3779b9) | 0;
		let mixed = counter ^ (counter >>> 16);
		mixed = Math.imul(mixed, 0x21f0aaad);
		mixed ^= mixed >>> 15;
		mixed = Math.imul(mixed, 0x735a2d97);
		return (mixed ^ (mixed >>> 15)) >>> 0;
	};
}

function turned(bits: number, by: number): number {
	return (bits << by) | (bits >>> (32 - by));
}
