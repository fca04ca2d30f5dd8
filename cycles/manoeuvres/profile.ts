import { at } from "../../shared/at.ts";
import type { Phase } from "../../shared/cycle.ts";

/** m/s²; how briskly a manoeuvre pulls away and slows down where its own rate is not the point. */
const EASY_RATE = 1.2;

/**
 * W/kg; above EASY_POWER / EASY_RATE = 10 m/s the pulling away keeps this power instead of its rate, as a driver
 * does. It is about half of what a compact hybrid can give.
 */
const EASY_POWER = 12;

/** s; every manoeuvre stands so long before it starts and after it has stopped. */
export const STAND_BEFORE = 3;
export const STAND_AFTER = 5;

/** s; a hill begins and ends over this time. */
const GRADE_CHANGE = 3;

/** Draws a speed trace piece by piece, each piece a straight line from where the last one ended. */
export class Profile {
  private readonly times: number[] = [0];
  private readonly speeds: number[] = [0];
  private readonly grades: number[];
  private readonly begun: { id: string; title: string; start: number }[] = [];

  /** Starts at rest at time 0. @param grade rise over run at the start */
  constructor(grade = 0) {
    this.grades = [grade];
  }

  /** Opens a named part; it lasts to the next one or to the end. */
  phase(id: string, title: string): void {
    this.begun.push({ id, title, start: this.now });
  }

  /** Keeps the speed. @param seconds above 0 */
  hold(seconds: number): void {
    this.push(this.now + seconds, this.speed, this.grade);
  }

  /** Goes to a speed in a straight line. @param speed m/s, may be negative @param rate m/s², above 0 */
  toSpeed(speed: number, rate: number): void {
    const seconds = Math.abs(speed - this.speed) / rate;
    if (seconds > 0) this.push(this.now + seconds, speed, this.grade);
  }

  /** Pulls away from rest as a calm driver does: steady at first, then at steady power. @param speed m/s, above 0 */
  pullAway(speed: number): void {
    const knee = EASY_POWER / EASY_RATE;
    this.toSpeed(Math.min(speed, knee), EASY_RATE);
    if (speed <= knee) return;
    // v² grows evenly at steady power; one sample a second follows the bend.
    const start = this.now;
    const total = (speed * speed - knee * knee) / (2 * EASY_POWER);
    for (let t = 1; t < total; t += 1) {
      this.push(start + t, Math.sqrt(knee * knee + 2 * EASY_POWER * t), this.grade);
    }
    this.push(start + total, speed, this.grade);
  }

  /** Slows calmly to rest. */
  slowToRest(): void {
    this.toSpeed(0, EASY_RATE);
  }

  /** Leads into another grade at steady speed. @param grade rise over run; nothing happens when it is the same */
  toGrade(grade: number): void {
    if (grade !== this.grade) this.push(this.now + GRADE_CHANGE, this.speed, grade);
  }

  /** The samples and parts drawn so far. */
  finish(): { time: Float64Array; speed: Float64Array; grade: Float64Array; phases: Phase[] } {
    const ends = [...this.begun.slice(1).map((part) => part.start), this.now];
    return {
      time: Float64Array.from(this.times),
      speed: Float64Array.from(this.speeds),
      grade: Float64Array.from(this.grades),
      phases: this.begun.map((part, k) => ({ ...part, end: at(ends, k) })),
    };
  }

  private get now(): number {
    return at(this.times, this.times.length - 1);
  }

  private get speed(): number {
    return at(this.speeds, this.speeds.length - 1);
  }

  private get grade(): number {
    return at(this.grades, this.grades.length - 1);
  }

  private push(time: number, speed: number, grade: number): void {
    this.times.push(time);
    this.speeds.push(speed);
    this.grades.push(grade);
  }
}
