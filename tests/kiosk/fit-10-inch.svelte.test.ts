import { describeFit } from "./describe-fit.ts";
import { panels } from "./show-bench.ts";

describeFit(panels[1]);
