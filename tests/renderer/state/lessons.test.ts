import { beforeEach, describe, expect, it } from "vitest";
import {
  addLesson,
  bringBackLesson,
  deletedLesson,
  deleteLesson,
  freshLessonId,
  lessonProgress,
  lessonSeed,
  openLesson,
  ownLessons,
  progressOf,
  projectWithLessons,
  setProgress,
  takeLessonsOf,
  writeLesson,
} from "../../../renderer/state/lessons.ts";
import { newProject, readProject, writeProject } from "../../../shared/project.ts";

const project = newProject({ kind: "preset", id: "compact" }, { kind: "catalogue", line: "udds" });

beforeEach(() => {
  ownLessons.value = [];
  lessonProgress.value = {};
  openLesson.value = null;
  deletedLesson.value = null;
  lessonSeed.value = 1;
});

describe("lessons in a project", () => {
  it("come back as they were, through the file's text: own ones, progress, answers, seed", () => {
    const id = addLesson("Drehmomente, überall", "# Drehmomente\n\n## Eins\n", ["three-shafts"]);
    setProgress("three-shafts", { step: 2, answers: { "basic-ratio": "2,5", "as-one": "a" } });
    setProgress("torque-split", { step: 1 });
    openLesson.value = "torque-split";
    lessonSeed.value = 4_294_967_295;
    const before = [ownLessons.value, lessonProgress.value, openLesson.value, lessonSeed.value];
    const text = writeProject(projectWithLessons(project));
    ownLessons.value = [];
    lessonProgress.value = {};
    openLesson.value = null;
    lessonSeed.value = 1;
    takeLessonsOf(readProject(text, "p"));
    expect([ownLessons.value, lessonProgress.value, openLesson.value, lessonSeed.value]).toEqual(before);
    expect(id).toBe("drehmomente-uberall");
  });

  it("read from files of before that have none", () => {
    const { lessons: _, lessonsBegun: __, ...old } = project;
    takeLessonsOf(readProject(JSON.stringify(old), "p"));
    expect(ownLessons.value).toEqual([]);
    expect(openLesson.value).toBeNull();
  });

  it("keep own lessons that the opened project does not have", () => {
    addLesson("Mine", "# Mine", []);
    takeLessonsOf({ ...project, lessons: [{ id: "theirs", title: "Theirs", text: "# Theirs" }] });
    expect(ownLessons.value.map(({ id }) => id)).toEqual(["mine", "theirs"]);
  });

  it("never make a project that cannot be written: too long a name or answer is left out", () => {
    setProgress("three-shafts", { answers: { ["q".repeat(200)]: "1", good: "2", long: "x".repeat(20_000) } });
    addLesson("", "# ", []);
    addLesson("t".repeat(1000), "", []);
    const written = readProject(writeProject(projectWithLessons(project)), "p");
    expect(written.lessonsBegun[0]?.answers).toEqual({ good: "2" });
    expect(written.lessons.map(({ title }) => title.length)).toEqual([1, 200]);
  });
});

describe("own lessons", () => {
  it("get ids of their own", () => {
    expect(freshLessonId("Three shafts", [])).toBe("three-shafts");
    expect(freshLessonId("Three shafts", ["three-shafts", "three-shafts-2"])).toBe("three-shafts-3");
    expect(freshLessonId("轴", [])).toBe("lesson");
    expect(freshLessonId("x".repeat(300), []).length).toBeLessThanOrEqual(60);
  });

  it("are written, deleted and brought back", () => {
    const id = addLesson("Mine", "# Mine", []) ?? "";
    writeLesson(id, "Mine, better", "# Mine, better");
    openLesson.value = id;
    deleteLesson(id);
    expect(ownLessons.value).toEqual([]);
    expect(openLesson.value).toBeNull();
    bringBackLesson();
    expect(ownLessons.value).toEqual([{ id, title: "Mine, better", text: "# Mine, better" }]);
    expect(deletedLesson.value).toBeNull();
  });

  it("are as many as a project holds, and no more", () => {
    for (let i = 0; i < 200; i += 1) expect(addLesson(`L ${i}`, "", [])).not.toBeNull();
    expect(addLesson("one more", "", [])).toBeNull();
    expect(() => writeProject(projectWithLessons(project))).not.toThrow();
  });

  it("begin at the first step", () => {
    expect(progressOf("unknown")).toEqual({ step: 0, answers: {} });
  });
});
