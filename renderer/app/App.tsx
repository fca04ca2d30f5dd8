import { place } from "../state/place.ts";
import { Patterns } from "../ui/Patterns.tsx";
import { Notice } from "./Notice.tsx";
import { PLACE } from "./places.ts";
import { Rail } from "./Rail.tsx";
import { Windows } from "./Windows.tsx";

/** The sheet: rail, top bar, the place, title block; windows over it. */
export function App() {
  const { Top, Sheet, Strip } = PLACE[place.value];
  return (
    <>
      <Patterns />
      <Rail />
      <Top />
      <Sheet />
      <Strip />
      <Notice />
      <Windows />
    </>
  );
}
