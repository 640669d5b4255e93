const tiny = 1e-9;

/**
 * A small dense linear program: most of c x with rows a x <= b and x >= 0, where rows may be added after solving. Rows given at the start have b >= 0.
 * Kept as a dictionary: each basic variable is its constant less its row times the nonbasic ones.
 */
export class LinearProgram {
  private readonly rows: Float64Array[] = [];
  private readonly constants: number[] = [];
  private readonly basic: number[] = [];
  private readonly nonbasic: number[];
  private readonly gain: Float64Array;
  private count: number;

  constructor(gain: readonly number[]) {
    this.gain = Float64Array.from(gain);
    this.nonbasic = gain.map((_, at) => at);
    this.count = gain.length;
  }

  /** Adds the row: coefficients by the number of the variable. */
  add(coefficients: ReadonlyMap<number, number>, most: number): void {
    const row = new Float64Array(this.nonbasic.length);
    let constant = most;
    for (const [variable, coefficient] of coefficients) {
      const at = this.nonbasic.indexOf(variable);
      if (at >= 0) {
        row[at]! += coefficient;
        continue;
      }
      const from = this.basic.indexOf(variable);
      constant -= coefficient * this.constants[from]!;
      const other = this.rows[from]!;
      for (let j = 0; j < row.length; j++) row[j]! -= coefficient * other[j]!;
    }
    this.rows.push(row);
    this.constants.push(constant);
    this.basic.push(this.count++);
  }

  /** Solves, from where the last solve ended. False where the number of steps did not do; the values are then not the best. */
  solve(steps: number): boolean {
    for (let step = 0; step < steps; step++) {
      const broken = this.lowestRow();
      const [row, column] = broken < 0 ? this.raising() : [broken, this.repairing(broken)];
      if (column < 0) return true;
      if (row < 0) return false;
      this.exchange(row, column);
    }
    return false;
  }

  value(variable: number): number {
    const at = this.basic.indexOf(variable);
    return at < 0 ? 0 : Math.max(0, this.constants[at]!);
  }

  private lowestRow(): number {
    let lowest = -1;
    let least = -tiny;
    for (let i = 0; i < this.constants.length; i++) if (this.constants[i]! < least) [lowest, least] = [i, this.constants[i]!];
    return lowest;
  }

  private raising(): [number, number] {
    let column = -1;
    let most = tiny;
    for (let j = 0; j < this.gain.length; j++) if (this.gain[j]! > most) [column, most] = [j, this.gain[j]!];
    if (column < 0) return [-1, -1];
    let row = -1;
    let least = Infinity;
    for (let i = 0; i < this.rows.length; i++) {
      const by = this.rows[i]![column]!;
      if (by > tiny && this.constants[i]! / by < least) [row, least] = [i, this.constants[i]! / by];
    }
    return [row, column];
  }

  private repairing(row: number): number {
    let column = -1;
    let least = Infinity;
    const entries = this.rows[row]!;
    for (let j = 0; j < entries.length; j++) {
      if (entries[j]! > -tiny) continue;
      const ratio = Math.min(0, this.gain[j]!) / entries[j]!;
      if (ratio < least) [column, least] = [j, ratio];
    }
    return column;
  }

  private exchange(row: number, column: number): void {
    const pivot = this.rows[row]!;
    const by = pivot[column]!;
    const constant = this.constants[row]! / by;
    for (let j = 0; j < pivot.length; j++) pivot[j]! /= by;
    pivot[column] = 1 / by;
    this.constants[row] = constant;
    for (let i = 0; i < this.rows.length; i++) {
      const other = this.rows[i]!;
      const factor = other[column]!;
      if (i === row || factor === 0) continue;
      this.constants[i]! -= factor * constant;
      for (let j = 0; j < other.length; j++) other[j]! -= factor * pivot[j]!;
      other[column] = -factor / by;
    }
    const factor = this.gain[column]!;
    for (let j = 0; j < pivot.length; j++) this.gain[j]! -= factor * pivot[j]!;
    this.gain[column] = -factor / by;
    [this.basic[row], this.nonbasic[column]] = [this.nonbasic[column]!, this.basic[row]!];
  }
}
