/**
 * Tolerances of graduated glass cylinders: how far a class A cylinder may be off at any mark; class B
 * may be off by twice as much.
 *
 * Source: ASTM E1272-02 (2012), Standard Specification for Laboratory Glass Graduated Cylinders,
 * Table 1; the rows of 1000 and 2000 mL are from memory.
 */
export interface CylinderTolerance {
  readonly capacityMl: number;
  readonly leastGraduationMl: number;
  /** Largest error of class A, mL. */
  readonly classAMl: number;
  readonly verified: 'seen' | 'memory';
}

const row = (
  capacityMl: number,
  leastGraduationMl: number,
  classAMl: number,
  verified: CylinderTolerance['verified'] = 'seen',
): CylinderTolerance => ({ capacityMl, leastGraduationMl, classAMl, verified });

/** Smallest first. */
export const CYLINDER_TOLERANCES: readonly CylinderTolerance[] = [
  row(5, 0.1, 0.05),
  row(10, 0.1, 0.1),
  row(25, 0.2, 0.17),
  row(50, 1, 0.25),
  row(100, 1, 0.5),
  row(250, 2, 1),
  row(500, 5, 2),
  row(1000, 10, 3, 'memory'),
  row(2000, 20, 6, 'memory'),
];
