import { describe } from "vitest";
import { PHONE } from "@/tests/support/browserPage";
import { theWholeJob } from "./theJob";

describe("the whole job, by touch at 360 x 740", () => theWholeJob({ size: PHONE, touch: true }));
