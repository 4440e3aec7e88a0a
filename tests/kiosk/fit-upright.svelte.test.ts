import { describeFitUpright } from "./describe-fit.ts";

describeFitUpright();
