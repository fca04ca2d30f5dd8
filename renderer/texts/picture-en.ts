/** Texts of pictures and clips. */
export const picture = {
  title: "Save a picture",
  open: "Picture",
  whole: "Whole sheet",
  as: (view: string, kind: string) => `${view} as ${kind}`,
  saved: (name: string) => `Saved: ${name}`,
  clip: {
    open: "Clip",
    title: "Make a clip",
    about:
      "What is on stage, drawn frame by frame: the same clip on any machine, however slow. It takes its time; the window stays alive.",
    from: "From",
    to: "To",
    seconds: "s",
    rate: "Times real time",
    frames: "Frames a second",
    size: "Size",
    captions: "Captions: time, speed, regime",
    length: (seconds: string, frames: string) => `${seconds} s, ${frames} frames`,
    make: "Make the clip",
    making: (percent: string) => `Drawing, ${percent} %`,
    cancel: "Cancel",
    save: "Save as WebM",
    none: "This browser cannot write video. Everything else works.",
    bad: "The end must come after the start, and both within the drive.",
    long: (most: string) => `At most ${most} frames: a shorter span, or fewer frames a second.`,
  },
} as const;
