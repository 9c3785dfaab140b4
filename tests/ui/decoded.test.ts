import { expect, it } from "vitest";
import { decoded } from "@/app/decoded";

it("a piece of an address is read as it was meant, and a broken one as it stands", () => {
	expect(decoded("k%2012%2Fa")).toBe("k 12/a");
	expect(decoded("%E0%A4%A")).toBe("%E0%A4%A");
	expect(decoded("100%")).toBe("100%");
});
