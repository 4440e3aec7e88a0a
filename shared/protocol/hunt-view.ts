import type { FaultName } from "../electrical/fault-name.ts";

/** What a hunt came to, fault by fault, in points. */
export interface HuntResult {
  faults: { fault: FaultName; isKindRight: boolean; isPlaceRight: boolean; isShown: boolean }[];
  isOrderKept: boolean;
  readingCount: number;
  points: number;
  mostPoints: number;
}

/** A hunt as the learner's screen shows it: how many faults there are, what they called them, never what they are. */
export interface HuntView {
  faultCount: number;
  named: FaultName[];
  /** What was hidden; after the hand-in of practice alone. */
  result?: HuntResult;
}
