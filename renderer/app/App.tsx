import { Bench } from "../bench/Bench.tsx";
import { Patterns } from "../ui/Patterns.tsx";
import { Notice } from "./Notice.tsx";
import { Rail } from "./Rail.tsx";
import { TitleStrip } from "./TitleStrip.tsx";
import { TopBar } from "./TopBar.tsx";
import { Windows } from "./Windows.tsx";

/** The sheet: rail, top bar, the place, title block; windows over it. */
export const App = () => (
  <>
    <Patterns />
    <Rail />
    <TopBar />
    <Bench />
    <TitleStrip />
    <Notice />
    <Windows />
  </>
);
