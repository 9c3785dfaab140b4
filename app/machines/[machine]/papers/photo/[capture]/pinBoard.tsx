"use client";

import { useRouter } from "next/navigation";
import { type KeyboardEvent, type MouseEvent, useEffect, useRef, useState } from "react";
import { Button } from "@/app/ui/button";
import { Empty } from "@/app/ui/empty";
import { Buttons, Stack } from "@/app/ui/layouts";
import { Notice } from "@/app/ui/notice";
import { Picture } from "@/app/ui/photoGrid";
import { PrintButton } from "@/app/ui/printButton";
import type { ThingGroup } from "@/lib/pins/choices";
import type { Pin } from "@/lib/pins/queries";
import { writeThing } from "@/lib/pins/rules";
import { PinLegend } from "../../pinLegend";
import { percent, Spots } from "../../pinnedPicture";
import { pinHref, pinInWords } from "../../pinWords";
import { PinForm } from "./pinForm";

type Place = { readonly x: number; readonly y: number };
/** The pin that is being set or changed; null while the photo is only looked at. */
type Open = { readonly pin: Pin | null; readonly at: Place };

/** One per cent a step, a tenth of one with shift. */
const STEP = 100;
const FINE = 10;
const within = (part: number): number => Math.min(10_000, Math.max(0, Math.round(part)));

/** The photo with its pins, what they mean, and the ways to put on one more, by touch or by keyboard alone. */
export function PinBoard({
	captureId,
	src,
	alt,
	pins,
	groups,
	base,
	mayPin,
}: {
	readonly captureId: string;
	readonly src: string;
	readonly alt: string;
	readonly pins: readonly Pin[];
	readonly groups: readonly ThingGroup[];
	readonly base: string;
	/** False on a photo that was withdrawn. */
	readonly mayPin: boolean;
}) {
	const router = useRouter();
	const [open, setOpen] = useState<Open | null>(null);
	const [done, setDone] = useState("");
	const crosshair = useRef<HTMLButtonElement>(null);
	const addButton = useRef<HTMLSpanElement>(null);

	const start = (pin: Pin | null, at: Place) => {
		setDone("");
		setOpen({ pin, at });
	};
	const key = open === null ? "" : (open.pin?.id ?? "new");
	const was = useRef("");
	// The focus goes to the crosshair, and back to where one more begins.
	useEffect(() => {
		if (key !== "") crosshair.current?.focus();
		else if (was.current !== "") addButton.current?.querySelector("button")?.focus();
		was.current = key;
	}, [key]);

	const close = (words: string) => {
		setOpen(null);
		setDone(words);
		if (words !== "") router.refresh();
	};
	/** Of pins whose targets overlap, the one whose middle is nearest is meant, whichever lies on top. */
	const nearest = (event: MouseEvent<HTMLElement>) => {
		const over = (event.target as Element).closest(".af-pin");
		// A key has no place, and who wants another window knows which link is under the pointer.
		if (over === null || open || event.detail === 0 || event.ctrlKey || event.metaKey || event.shiftKey) return;
		const away = (pin: Element) => {
			const box = pin.getBoundingClientRect();
			return Math.hypot(box.left + box.width / 2 - event.clientX, box.top + box.height / 2 - event.clientY);
		};
		const meant = [...event.currentTarget.querySelectorAll(".af-pin")].reduce((a, b) => (away(b) < away(a) ? b : a), over);
		if (meant === over) return;
		event.preventDefault();
		event.stopPropagation();
		const href = meant.getAttribute("href");
		if (href !== null) router.push(href);
	};
	const point = (event: MouseEvent<HTMLElement>) => {
		if (!mayPin || (event.target as Element).closest(open ? "button" : ".af-pin, button")) return;
		const box = event.currentTarget.querySelector("img")?.getBoundingClientRect();
		if (!box || box.width === 0 || box.height === 0) return;
		const at = {
			x: within(((event.clientX - box.left) / box.width) * 10_000),
			y: within(((event.clientY - box.top) / box.height) * 10_000),
		};
		if (open) setOpen({ ...open, at });
		else start(null, at);
	};
	const move = (right: number, down: number) =>
		setOpen((now) => now && { ...now, at: { x: within(now.at.x + right), y: within(now.at.y + down) } });
	const byKey = (event: KeyboardEvent) => {
		const way = WAYS[event.key];
		if (event.key === "Escape") return close("");
		if (!way) return;
		event.preventDefault();
		const step = event.shiftKey ? FINE : STEP;
		move(way.right * step, way.down * step);
	};

	const shown = pins.filter(({ id }) => id !== open?.pin?.id);
	return (
		<Stack>
			{/* biome-ignore lint/a11y/useKeyWithClickEvents: the button "Add a pin" and the arrow keys of its crosshair do the same */}
			<figure className="af-pinned" data-open={mayPin ? "" : undefined} onClick={point} onClickCapture={nearest}>
				<Picture src={src} alt={alt} eager />
				<Spots
					spots={shown.map((pin) => {
						// While a pin is being set, a tap on another must not lead away.
						const href = open ? undefined : pinHref(pin, base);
						return {
							id: pin.id,
							number: pin.number,
							x: pin.x,
							y: pin.y,
							says: pinInWords(pin),
							gone: pin.gone,
							...(href === undefined ? {} : { href }),
						};
					})}
				/>
				{open ? (
					<button
						ref={crosshair}
						type="button"
						className="af-crosshair"
						style={{ left: percent(open.at.x), top: percent(open.at.y) }}
						aria-label={`The pin goes ${open.at.x / 100} % from the left and ${open.at.y / 100} % from the top. Arrow keys move it, with shift a little.`}
						onKeyDown={byKey}
					>
						<svg viewBox="0 0 64 64" aria-hidden="true">
							{[
								{ color: "#fffdf6", width: 6 },
								{ color: "#1c2424", width: 2.5 },
							].map(({ color, width }) => (
								<path
									key={color}
									d="M32 2v22M32 40v22M2 32h22M40 32h22M32 20a12 12 0 1 0 0 24a12 12 0 1 0 0-24"
									fill="none"
									stroke={color}
									strokeWidth={width}
								/>
							))}
							<circle cx="32" cy="32" r="2" fill="#1c2424" stroke="#fffdf6" />
						</svg>
					</button>
				) : null}
			</figure>
			<p role="status" className={done === "" ? "sr-only" : ""}>
				{done}
			</p>
			{open ? (
				<div className="no-print">
					<Stack>
						<fieldset className="af-nudges">
							<legend className="af-hint">Tap the picture again to move the mark, or in small steps:</legend>
							{Object.entries(WAYS).map(([name, way]) => (
								<Button key={name} onClick={() => move(way.right * FINE * 3, way.down * FINE * 3)}>
									{way.words}
								</Button>
							))}
						</fieldset>
						<PinForm
							key={key}
							captureId={captureId}
							pin={open.pin && { id: open.pin.id, entry: open.pin.entry, number: open.pin.number }}
							at={open.at}
							first={{ thing: open.pin ? writeThing(open.pin.thing) : "", words: open.pin?.words ?? "" }}
							named={open.pin?.name ?? ""}
							groups={groups}
							onDone={close}
						/>
					</Stack>
				</div>
			) : (
				<Buttons>
					{mayPin ? (
						<span ref={addButton}>
							<Button kind="main" onClick={() => start(null, { x: 5000, y: 5000 })}>
								Add a pin
							</Button>
						</span>
					) : null}
					{pins.length > 0 ? <PrintButton>Print it with its numbers</PrintButton> : null}
				</Buttons>
			)}
			{pins.length > 0 ? (
				<PinLegend
					pins={pins}
					base={base}
					caption="What the numbers on the photo mark"
					{...(mayPin && !open
						? {
								deed: (pin: Pin) => (
									<Button kind="quiet" onClick={() => start(pin, pin)}>
										Change<span className="sr-only"> pin {pin.number}</span>
									</Button>
								),
							}
						: {})}
				/>
			) : mayPin ? (
				open ? null : (
					<div className="no-print">
						<Empty title="No pins yet">Tap the picture where something is, and say what it is. A pin is a way to the part.</Empty>
					</div>
				)
			) : (
				<Notice live="off">
					<p>It has no pins.</p>
				</Notice>
			)}
		</Stack>
	);
}

const WAYS: Readonly<Record<string, { readonly words: string; readonly right: number; readonly down: number }>> = {
	ArrowLeft: { words: "Left", right: -1, down: 0 },
	ArrowRight: { words: "Right", right: 1, down: 0 },
	ArrowUp: { words: "Up", right: 0, down: -1 },
	ArrowDown: { words: "Down", right: 0, down: 1 },
};
