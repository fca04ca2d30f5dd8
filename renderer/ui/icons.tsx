/** Our own icons: 24 grid, 1.5 stroke, round ends; always beside a word. */
const PATHS = {
  bench:
    "M12 3.500a8.500 8.500 0 100 17 8.500 8.500 0 000-17M12 9a3 3 0 100 6 3 3 0 000-6M12 3.500V9M4.640 16.250L9.400 13.500M19.360 16.250L14.600 13.500",
  settings: "M4 7h9M17 7h3M15 5v4M4 17h3M11 17h9M9 15v4",
  glossary: "M5 4h11a3 3 0 013 3v13H8a3 3 0 01-3-3zM5 17a3 3 0 013-3h11M9 8h6",
  keys: "M3 6.500h18v11H3zM6.500 10h.01M10 10h.01M13.500 10h.01M17 10h.01M8 14h8",
  undo: "M8 5L4 9l4 4M4 9h9a6 6 0 010 11h-3",
  redo: "M16 5l4 4-4 4M20 9h-9a6 6 0 000 11h3",
  projector: "M3 4.500h18M4.500 4.500v11h15v-11M12 15.500v4M8.500 20.500h7",
  open: "M3 19V5h6l2 3h10v11zM3 11h18",
  save: "M5 3.500h11l3.500 3.500v13.500h-14.500zM8 3.500v5h7v-5M8 20.500v-7h8v7",
  play: "M7 4.500l12 7.500-12 7.500z",
  pause: "M8 5v14M16 5v14",
  back: "M18 5v14l-10-7zM6 5v14",
  on: "M6 5v14l10-7zM18 5v14",
  view: "M3 12s3.500-6 9-6 9 6 9 6-3.500 6-9 6-9-6-9-6M12 9.500a2.500 2.500 0 100 5 2.500 2.500 0 000-5",
  road: "M3 19c4 0 4-6 8-7s4-7 10-7M3 21.500h18",
  compare: "M4 4v16h16M7 15c3 0 3-8 6-8s3 4 6 4M7 11c3 0 4 5 6 5s3-2 6-2",
  lessons: "M5 3.500h9l5 5v12H5zM14 3.500v5h5M8 12h8M8 15.500h8",
  vehicle: "M4 7h16M4 7v4M9 7v4M14 7v4M20 7v4M4 17h16M7 13v4M12 13v4M17 13v4",
  run: "M19 12a7 7 0 11-2.050-4.950M19.500 3.500v4.500h-4.500",
  first: "M6 5v14M18 5l-9 7 9 7",
  less: "M15 5l-7 7 7 7",
  more: "M9 5l7 7-7 7",
  last: "M18 5v14M6 5l9 7-9 7",
  loop: "M4 5v14M20 5v14M8 12h8M13 9l3 3-3 3",
  ask: "M12 3.500a8.500 8.500 0 100 17 8.500 8.500 0 000-17M9.500 9.500a2.500 2.500 0 113.600 2.250c-.7.4-1.100.9-1.100 1.750M12 16.500h.01",
  list: "M8 6h12M8 12h12M8 18h12M4 6h.01M4 12h.01M4 18h.01",
  figures: "M4 20V4M4 20h16M8 16v-5M12 16V7M16 16v-7",
  picture: "M3.500 4.500h17v15h-17zM3.500 16l5-5 4 4 3-3 5 4.500M15.500 8.500h.01",
  close: "M6 6l12 12M18 6L6 18",
  cycles: "M3.500 20V4M3.500 20h17M5 19l2.500-9h3l1.500 5 2.500-9h2.500l1.500 13",
  up: "M6 14.500l6-6 6 6",
  down: "M6 9.500l6 6 6-6",
  print: "M7 8V3.500h10V8M7 16H4V8h16v8h-3M7 13.500h10v7H7z",
  plus: "M12 5v14M5 12h14",
  mark: "M12 4v10M8 10l4 4 4-4M5 19h14",
} as const;

export type IconName = keyof typeof PATHS;

/** An icon; the word beside it is its name. */
export const Icon = ({ name }: { name: IconName }) => (
  <svg class="icon" viewBox="0 0 24 24" aria-hidden="true">
    <path d={PATHS[name]} />
  </svg>
);
