import { bandThrough, fanBand, headAt } from "./shapes.ts";
import { left, right, type Sheet, THINNEST } from "./sheet.ts";

/** Names of the flows at the engine. */
interface EngineFlows<F extends string> {
  readonly fuel: F;
  readonly power: F;
  /** what the engine loses, from the lane downward */
  readonly losses: readonly F[];
}

/**
 * Draws fuel, the engine's bar and its heat under the lane. A motored engine's friction leaves the bar on the left, as
 * the power runs, and turns round under it to the same place. Returns where the heads end: middle and width a loss.
 */
export function engineSide<F extends string>(sheet: Sheet<F>, { fuel, power, losses }: EngineFlows<F>) {
  const { places } = sheet;
  const x = sheet.at("engine");
  const out = sheet.whole(power);
  const onLeft = losses.map((id) => [id, sheet.free(id, "left")] as const);
  const onRight = losses.map((id) => [id, sheet.free(id, "right")] as const);
  const heat = onRight.reduce((sum, [, px]) => sum + px, 0);
  const foot = places.lower + heat;
  const bar = sheet.bar(
    "engine",
    x,
    foot,
    [["fuel", sheet.whole(fuel)], ...onLeft],
    [["out", out], ...onRight],
  );
  const fuelY = bar.left("fuel");
  sheet.ribbon(fuel, fuel, sheet.whole(fuel), [right(places.fuel, fuelY), right(x, fuelY)]);
  let top = places.lower + 6;
  return losses.map((id, i) => {
    const [l, r] = [sheet.free(id, "left"), sheet.free(id, "right")];
    const width = Math.max(THINNEST, l + r);
    if (l > 0 && l >= THINNEST) top = Math.max(top, foot + 6);
    const y = top + width / 2;
    top += width + places.text * (i === losses.length - 1 ? 0 : 0.8);
    const head = headAt(places.heat, y, width, [1, 0]);
    if (r > 0) {
      const w = Math.max(THINNEST, r);
      sheet.put(id, id, w, fanBand(x, bar.right(id), places.heat, y - width / 2 + w / 2, w), head);
    }
    if (l >= THINNEST || (l > 0 && r <= 0)) {
      const w = Math.max(THINNEST, l);
      const end = y + width / 2 - w / 2;
      const band = bandThrough([left(x, bar.left(id)), right(x, end), right(places.heat, end)], w);
      sheet.put(`${id}Round`, id, w, band, r > 0 ? null : head);
    }
    return { flow: id, y, width: l + r };
  });
}
