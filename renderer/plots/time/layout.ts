/** Least height of a row of plots, in lines of text: rather fewer rows than smaller ones. */
const LEAST_LINES = 3.3;

/** Widths of names and readouts, in sizes of text. */
const NAMES = 10.6;
const READOUTS = 9.6;

/** px: inner margin of the view, and between two rows. */
const MARGIN = 14;
const GAP = 7;

const LANE_COUNT = 4;

/** Where everything of view D lies, px from its upper left corner. */
export interface TimeLayout {
  /** left edge and width of lanes and plots */
  readonly left: number;
  readonly width: number;
  /** height of a lane, top of the first, and of the moments' marks under the last */
  readonly lane: number;
  readonly lanes: number;
  readonly marks: number;
  /** top and height of each row of plots, from top to foot */
  readonly rows: readonly { readonly top: number; readonly height: number }[];
  /** where the time axis begins, and its height */
  readonly foot: number;
  readonly footHeight: number;
  /** left edge of the readouts, and their width */
  readonly right: number;
  readonly readouts: number;
  /** most rows that have room */
  readonly fits: number;
}

/**
 * Lays out lanes, plots and readouts.
 * @param width, height of the view, px
 * @param text size of text, px
 * @param wanted rows of plots that are wanted, ≥ 1
 */
export function timeLayout(width: number, height: number, text: number, wanted: number): TimeLayout {
  const left = MARGIN + NAMES * text;
  const right = width - MARGIN - READOUTS * text;
  const lane = Math.round(1.2 * text);
  const lanes = 12;
  const marks = lanes + LANE_COUNT * lane;
  const first = marks + 11;
  const footHeight = 1.7 * text;
  const foot = height - footHeight - 10;
  const room = foot - first + GAP;
  const fits = Math.max(1, Math.floor(room / (LEAST_LINES * text + GAP)));
  const count = Math.max(1, Math.min(wanted, fits));
  const pitch = room / count;
  return {
    left,
    width: Math.max(0, right - left),
    lane,
    lanes,
    marks,
    rows: Array.from({ length: count }, (_, i) => {
      const top = Math.round(first + i * pitch);
      return { top, height: Math.round(first + (i + 1) * pitch) - GAP - top };
    }),
    foot,
    footHeight,
    right: right + 12,
    readouts: READOUTS * text - 12,
    fits,
  };
}
