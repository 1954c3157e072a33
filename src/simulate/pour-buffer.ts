/** A column of pour times that grows and is filled again and again. */
export interface PourBuffer {
  atS: Float64Array<ArrayBuffer>;
  /** How many of the entries are in use. */
  count: number;
}

export function pourBuffer(room = 64): PourBuffer {
  return { atS: new Float64Array(room), count: 0 };
}

/** Makes room for one more pour. */
export function enlarge(buffer: PourBuffer): void {
  const larger = new Float64Array(buffer.atS.length * 2);
  larger.set(buffer.atS);
  buffer.atS = larger;
}
