import { describe } from "vitest";
import { DESK } from "@/tests/support/browserPage";
import { theWholeJob } from "./theJob";

describe("the whole job, by keyboard alone at 1440 x 900", () => theWholeJob({ size: DESK, touch: false }));
