import type { LabRole } from '../../model/index.ts';

/**
 * The result export of the US Water Quality Portal, a published layout whose columns mean one thing
 * each.
 *
 * Source: Water Quality Portal, physical/chemical result download, column names as downloaded.
 */
const WQP_COLUMNS: Readonly<Partial<Record<LabRole, string>>> = {
  labSample: 'ActivityIdentifier',
  clientSample: 'MonitoringLocationIdentifier',
  sampleKind: 'ActivityTypeCode',
  matrix: 'ActivityMediaName',
  analyte: 'CharacteristicName',
  fraction: 'ResultSampleFractionText',
  basis: 'MethodSpeciationName',
  result: 'ResultMeasureValue',
  unit: 'ResultMeasure/MeasureUnitCode',
  qualifier: 'MeasureQualifierCode',
  condition: 'ResultDetectionConditionText',
  limit: 'DetectionQuantitationLimitMeasure/MeasureValue',
  limitType: 'DetectionQuantitationLimitTypeName',
  limitUnit: 'DetectionQuantitationLimitMeasure/MeasureUnitCode',
  method: 'ResultAnalyticalMethod/MethodIdentifier',
  collected: 'ActivityStartDate',
  collectedTime: 'ActivityStartTime/Time',
  timeZone: 'ActivityStartTime/TimeZoneCode',
  analysed: 'AnalysisStartDate',
};

const NEEDED = ['ActivityIdentifier', 'CharacteristicName', 'ResultMeasureValue'] as const;

/** The columns of a portal export; null where the header is not one. */
export function exchangeColumns(
  header: readonly string[],
): Readonly<Partial<Record<LabRole, number>>> | null {
  if (!NEEDED.every((name) => header.includes(name))) return null;
  const columns: Partial<Record<LabRole, number>> = {};
  for (const [role, name] of Object.entries(WQP_COLUMNS) as [LabRole, string][]) {
    const index = header.indexOf(name);
    if (index !== -1) columns[role] = index;
  }
  return columns;
}
