/** Blocks that an author inserts, each a whole one that reads without a fault below a step with a bench. */
export const lessonSnippets = {
  lesson: "```lesson\nid: my-lesson\nminutes: 10\nabout: One sentence for the list.\n```\n",
  step: "## A step\n\nText of the step. The [carrier](part:carrier) turns at {carrier speed}; see [B](view:B).\n",
  bench:
    "```bench\ncarrier: 2400 rev/min\nring: 1000 rev/min\nengine torque: 100 N·m (60 to 110 by 5)\nfree: engine torque\n```\n",
  run: "```run\nname: town\ncycle: nycc\nstrategy: rules\nat: 120 s\n```\n",
  point: "```point\nview: B\nquantity: engine torque\nsay: The engine pushes here.\n```\n",
  ask: "```ask\nname: my-question\nquestion: What torque does the sun machine put on the sun? Down is negative.\nkey: sun torque\nunit: N·m\ntolerance: 2 % or 0.5 N·m\n```\n",
  choice:
    "```ask\nname: my-choice\nquestion: What does the sun machine do?\nchoice: It generates. | sun power < 0\nchoice: It drives. | sun power > 0\nchoice: Neither. | sun power = 0\n```\n",
  /** a new lesson; its title is put in front */
  fresh:
    "```lesson\nminutes: 10\nabout: One sentence for the list.\n```\n\nWhat the lesson is about.\n\n## The first step\n\n```bench\ncarrier: 2400 rev/min\nring: 1000 rev/min\nengine torque: 100 N·m (60 to 110 by 5)\nfree: engine torque\n```\n\nThe engine pushes the [carrier](part:carrier) with {engine torque}.\n\n```ask\nname: sun-torque\nquestion: What torque does the sun machine put on the sun? Down is negative.\nkey: sun torque\nunit: N·m\ntolerance: 2 %\n```\n",
  freshTitle: "A new lesson",
} as const;
