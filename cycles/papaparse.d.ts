/**
 * The part of papaparse that is used here. The full typings need the browser's and Node's types, which this folder
 * must do without.
 */
declare module "papaparse" {
  interface ParseError {
    readonly type: string;
    readonly code: string;
    readonly message: string;
  }
  interface StepResult {
    readonly data: readonly string[];
    readonly errors: readonly ParseError[];
  }
  interface StepParser {
    abort(): void;
  }
  interface ParseConfig {
    readonly delimiter: string;
    readonly newline: "\n";
    readonly header: false;
    readonly skipEmptyLines: false;
    readonly step: (result: StepResult, parser: StepParser) => void;
  }
  interface Table<T> {
    readonly data: readonly T[];
    readonly errors: readonly ParseError[];
  }
  const Papa: {
    /** Runs to the end before it returns when given text and no worker. */
    parse(text: string, config: ParseConfig): void;
    /** Reads a whole table. */
    parse<T>(
      text: string,
      config?: { readonly header?: boolean; readonly skipEmptyLines?: boolean },
    ): Table<T>;
  };
  export default Papa;
}
