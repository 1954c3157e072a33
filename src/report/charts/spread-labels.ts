/**
 * Places for labels beside their lines: as near as can be to where each belongs, none closer than
 * `gap` to the next, none outside `low` to `high`.
 *
 * Labels that would meet form a block centred on the mean of their wanted places (the least-squares
 * solution for a fixed order), and blocks that meet are joined.
 *
 * @param wanted wanted places, any order
 * @returns places in the order of `wanted`; where they cannot all fit, spread evenly over the room
 */
export function spreadLabels(
  wanted: readonly number[],
  gap: number,
  low: number,
  high: number,
): number[] {
  const count = wanted.length;
  const tight = count > 1 ? Math.min(gap, (high - low) / (count - 1)) : gap;
  const order = wanted
    .map((_, i) => i)
    .sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0) || a - b);
  let blocks: Block[] = [];
  for (const i of order) {
    blocks = settled([...blocks, { members: [i], total: wanted[i] ?? 0 }], tight, low, high);
  }
  const places = new Array<number>(count).fill(low);
  for (const block of blocks) {
    const start = startOf(block, tight, low, high);
    block.members.forEach((member, i) => {
      places[member] = start + i * tight;
    });
  }
  return places;
}

interface Block {
  readonly members: readonly number[];
  /** Sum of the wanted places. */
  readonly total: number;
}

function settled(blocks: readonly Block[], gap: number, low: number, high: number): Block[] {
  const last = blocks.at(-1);
  const before = blocks.at(-2);
  if (last === undefined || before === undefined) return [...blocks];
  const end = startOf(before, gap, low, high) + lengthOf(before, gap);
  if (startOf(last, gap, low, high) - end >= gap - 1e-9) return [...blocks];
  const joined = {
    members: [...before.members, ...last.members],
    total: before.total + last.total,
  };
  return settled([...blocks.slice(0, -2), joined], gap, low, high);
}

function lengthOf(block: Block, gap: number): number {
  return (block.members.length - 1) * gap;
}

function startOf(block: Block, gap: number, low: number, high: number): number {
  const length = lengthOf(block, gap);
  const start = block.total / block.members.length - length / 2;
  return Math.max(low, Math.min(start, high - length));
}
