import {
  keyOfRole,
  type LabLayoutFile,
  type LabRole,
  type LayoutColumn,
} from '../../model/index.ts';
import type { LayoutPlan } from './layout-plan.ts';
import type { LayoutReading } from './propose-layout.ts';

/**
 * The sidecar that states what was concluded about a file, ready to be written. What stayed open
 * stands in `questions`; as long as one is there, the file is not read.
 */
export function readySidecar(reading: LayoutReading): LabLayoutFile {
  const { plan, text } = reading;
  const nameOf = (index: number): LayoutColumn => {
    const name = plan.header[index] ?? '';
    const isUnique = plan.header.indexOf(name) === plan.header.lastIndexOf(name);
    return name !== '' && isUnique ? name : index + 1;
  };
  const questions = reading.findings
    .filter(({ level, code }) => level === 'error' && code !== 'date-order-unclear')
    .map(({ message }) => message);
  const columns = (Object.entries(plan.columns) as [LabRole, number][]).map(
    ([role, index]) => [keyOfRole(role), nameOf(index)] as const,
  );
  const constants = (Object.entries(plan.constants) as [LabRole, string][]).map(
    ([role, text]) => [keyOfRole(role), text] as const,
  );
  return {
    layout: plan.shape,
    encoding: text.encoding,
    delimiter: plan.delimiter as LabLayoutFile['delimiter'],
    decimal_mark: plan.marks.decimal,
    header_row: plan.headerRow,
    ...(plan.unitsRow ? { units_row: true } : {}),
    header: [...plan.header],
    columns: Object.fromEntries(columns),
    ...(plan.series.length === 0 ? {} : { series: seriesOf(plan, nameOf) }),
    ...(constants.length === 0 ? {} : { constants: Object.fromEntries(constants) }),
    ...(plan.columns.limit === undefined ? {} : { lone_limit: plan.loneLimit }),
    ...(plan.qualifierList === null ? {} : { qualifier_list: plan.qualifierList }),
    ...(hasDates(plan) ? { date_order: plan.dateOrder } : {}),
    ...(questions.length === 0 ? {} : { questions }),
  };
}

function hasDates(plan: LayoutPlan): boolean {
  const { collected, received, analysed, reported } = plan.columns;
  return [collected, received, analysed, reported].some((index) => index !== undefined);
}

function seriesOf(
  plan: LayoutPlan,
  nameOf: (index: number) => LayoutColumn,
): NonNullable<LabLayoutFile['series']> {
  return plan.series.map((item) => ({
    column: nameOf(item.value),
    ...(item.analyte === null ? {} : { analyte: item.analyte }),
    ...(item.sample === null ? {} : { sample: item.sample }),
    ...(item.unit === null ? {} : { unit: item.unit }),
    ...Object.fromEntries(
      Object.entries(item.beside).map(([role, index]) => [role, nameOf(index)]),
    ),
  }));
}
