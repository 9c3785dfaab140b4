// A deed that waits on a phone, for tests of the queue.

import type { Waiting } from "@/lib/outbox/queue";

export const aDeed = (deed: string, more: Partial<Waiting> = {}): Waiting => ({
	deed,
	kind: "take-out",
	at: "2026-03-02T08:00:00.000Z",
	words: deed,
	machine: null,
	person: null,
	input: {},
	photos: [],
	bagOf: null,
	wantsLabel: false,
	mendAt: null,
	draft: null,
	file: null,
	sent: null,
	refused: null,
	...more,
});
