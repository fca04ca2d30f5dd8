import { left, type Parts, right, type Sheet } from "./sheet.ts";

/** Least air between a ribbon that turns round and what it turns round, px. */
const GAP = 7;

/** Names of the flows at the battery. */
interface BatteryFlows<F extends string> {
  readonly cells: F;
  readonly loss: F;
  readonly link: F;
}

/**
 * Draws the battery, at the upper left, and its way to the DC link: directly, or turning round it.
 * @param to heights at which its ribbons meet the DC link on the left and on the right
 */
export function batterySide<F extends string>(
  sheet: Sheet<F>,
  { cells, loss, link }: BatteryFlows<F>,
  to: { readonly direct: number; readonly over: number },
): void {
  const { places } = sheet;
  const x = sheet.at("battery");
  const source = sheet.whole(cells);
  const over = sheet.over(link);
  const side = (key: "left" | "right"): Parts => [[loss, sheet.free(loss, key)]];
  const bar = sheet.bar(
    "battery",
    x,
    places.cells,
    [...side("left"), ["cells", source]],
    [...side("right"), ["over", over], ["link", sheet.direct(link)]],
  );
  const y = bar.left("cells");
  sheet.bar("tip", places.tip, places.cells, [["cells", source]], [["cells", source]]);
  sheet.ribbon(cells, cells, source, [right(places.tip, y), right(x, y)]);
  const d = sheet.at("dcLink");
  const from = bar.right("link");
  // Level at first, so that the sun machine keeps its air.
  const bend = x + 0.3 * (d - x);
  sheet.ribbon(
    link,
    link,
    sheet.direct(link),
    [right(x, from), right(bend, from), right(d, to.direct)],
    0.74,
  );
  const high = Math.min(bar.right("over"), to.over - over - 2 * GAP);
  const round = [right(x, bar.right("over")), right(d, high), left(d, to.over)];
  sheet.ribbon(`${link}Over`, link, over, round, 0.25);
  sheet.turnOff([loss], -1, x, bar, places.text * 0.55);
}
