import type { Finding } from '../findings/index.ts';
import type { Outcome } from '../report/outcome.ts';

/**
 * The contract between the command line and the commands.
 *
 * To add a command: write `src/commands/<name>.ts` that exports
 * `run: CommandModule['run']`, and give it one entry in `src/cli/command-table.ts` (arguments,
 * summary, options, two examples, loader). Help, parsing, printing, exit codes and the checks of
 * every command follow from that entry. A command prints nothing, sets no exit code and looks at
 * no environment: it reads, computes, writes only the files it is for, and returns.
 */
export interface CommandModule {
  /**
   * Runs one call.
   * @throws {BenchError} where work cannot go on; it is printed like a finding
   */
  run(call: Call): Promise<CommandResult>;
}

/** One call, parsed and checked as far as that is possible without reading the bench. */
export interface Call {
  /** As many as the command's entry in the table asks for; paths are as the user wrote them. */
  readonly args: readonly string[];
  readonly options: CallOptions;
  readonly io: CallIo;
  /** Version of the tool, for provenance. */
  readonly version: string;
}

/** Every option a command may look at; what was not given is empty, null or false. */
export interface CallOptions {
  /** Filters: only these, in the order given; empty means all. Not checked against the bench. */
  readonly devices: readonly string[];
  readonly variants: readonly string[];
  readonly analytes: readonly string[];
  readonly scenarios: readonly string[];
  /** An integer from 0 to 4294967295; null: the seed of bench.json. */
  readonly seed: number | null;
  /** Pour sizes as written, such as `250 ml`; empty: the command's own. */
  readonly pours: readonly string[];
  /** Draws behind each range; null: as bench.json says. */
  readonly draws: number | null;
  /** Pours a day as written, such as `8`; empty: pours that stand alone, or the command's own. */
  readonly poursPerDay: readonly string[];
  /** water-use: pours a day come at random instead of evenly. */
  readonly randomPours: boolean;
  /** water-use: inputs set to other values, as written; at most one mode of water-use is asked for. */
  readonly sweeps: readonly string[];
  /** water-use: the total drain ratio against pour size. */
  readonly curve: boolean;
  /** water-use: which device drains least where. */
  readonly regions: boolean;
  /** water-use: the inputs with their uncertainty. */
  readonly inputs: boolean;
  /** water-use: the pour size at which two devices drain the same. */
  readonly breakEven: boolean;
  /** reductions: sums over fixed member lists. At most one of the four is true. */
  readonly sums: boolean;
  /** reductions: along the volume treated. */
  readonly filterLife: boolean;
  /** reductions: log10 reductions of organisms. */
  readonly log10: boolean;
  /** reductions: nominal doses of spiked feeds beside the measured feed. */
  readonly spikes: boolean;
  /** compare: which devices differ, pair by pair. At most one of this and `groups` is true. */
  readonly toldApart: boolean;
  /** compare: the groups of devices not told apart. */
  readonly groups: boolean;
  /** compare, next-tests: the difference that counts, as written, such as `5 %` or `1.5x`; null: as bench.json says. */
  readonly margin: string | null;
  /** pours: the first water after a pause. */
  readonly idleRise: boolean;
  /** pours: a TDS reading as written, such as `50 ppm`; null: none is chosen. */
  readonly above: string | null;
  /** other-feed, next-tests: file with the analysis of a feed; null: none was named. */
  readonly feed: string | null;
  /** Sample of that file; null: its only one. */
  readonly feedSample: string | null;
  /** other-feed: volume the devices have treated, as written; null: none is asked for. */
  readonly throughput: string | null;
  /** next-tests: what can be shown before a sample is taken. At most one of the two is true. */
  readonly plan: boolean;
  /** next-tests: the cheapest lab packages. */
  readonly packages: boolean;
  /** next-tests: price list of laboratories; null: none. */
  readonly prices: string | null;
  /** next-tests: reductions to be shown, as written: `lead=99 %`. */
  readonly wanted: readonly string[];
  /** next-tests and panel: as written; null: 80 %. */
  readonly power: string | null;
  /** panel: share of people to be found, as written; null: 30 %. */
  readonly tellers: string | null;
  /** next-tests: an amount of money as written; null: no limit. */
  readonly budget: string | null;
  /** next-tests: sampling events of a campaign; null: one. */
  readonly events: number | null;
  /** next-tests: product samples of each device at each event; null: one. */
  readonly replicates: number | null;
  /** check: write a sidecar layout beside each lab file. */
  readonly writeLayouts: boolean;
  /** check: an earlier edition whose published numbers are compared with these. */
  readonly against: string | null;
  /** notes: the folder to write. For other commands null: their data is written by the edge. */
  readonly folder: string | null;
  /** notes: write even where the folder holds files this tool did not write. */
  readonly force: boolean;
}

export interface CallIo {
  /**
   * Says what is being done, in a few words (`playing the scenarios`). Await it between the steps
   * of long work: it is where an interruption is let in, and never in the middle of writing.
   */
  progress(text: string): Promise<void>;
}

/** What a call gave. */
export interface CommandResult {
  /**
   * The data, for stdout or `--out`; null for a command that only writes files. Not printed when
   * `findings` hold an error, unless its schema is `findings/1`: there the findings are the data.
   */
  readonly outcome: Outcome | null;
  /**
   * Every finding of the call, also those that are rows of `findings/1`. An error among them makes
   * the call fail, so a command that writes files writes none of them when there is one.
   */
  readonly findings: readonly Finding[];
  /** Files and folders written, told to the user; paths as the user would write them. */
  readonly written: readonly string[];
  /** `moved`: a published number differs from the edition given with `--against`. */
  readonly end: 'done' | 'moved';
}

/**
 * The argument at a position.
 * @throws {RangeError} when the command's entry in the table asks for fewer
 */
export function argument(call: Pick<Call, 'args'>, index: number): string {
  const text = call.args[index];
  if (text === undefined) throw new RangeError(`the call has no argument ${index + 1}`);
  return text;
}
