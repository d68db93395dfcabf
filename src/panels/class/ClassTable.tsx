import { memo } from 'react';
import type { Exercise } from '../../core/teaching/exercise.ts';
import { whyUnmarked } from '../../io/classTable.ts';
import type { MarkedFile } from '../../io/markFiles.ts';
import { presentMark } from '../../words/presentMark.ts';
import { say } from '../../words/sayTeach.ts';

/** Measures that have a column; the CSV has all. */
const COLUMNS = [
  ['platform', 'platform-lateral'],
  ['platform', 'platform-depth'],
  ['apex', 'apex-lateral'],
  ['apex', 'apex-depth'],
  ['angle', 'angle'],
] as const;

interface RowProps {
  one: MarkedFile;
  exercise: Exercise;
  /** Shows the attempt beside the teacher's plan. */
  onShow: (one: MarkedFile) => void;
}

const Row = memo(function Row({ one, exercise, onShow }: RowProps) {
  const { file, mark } = one;
  if (!mark)
    return (
      <tr className="class-fault" data-file={file}>
        <th scope="row" className="class-name">
          {file}
        </th>
        <td colSpan={COLUMNS.length + 2}>{whyUnmarked(one)}</td>
      </tr>
    );
  const shown = presentMark(mark, exercise);
  const name = shown.label === '' ? file : shown.label;
  return (
    <tr data-file={file}>
      <th scope="row" className="class-name" title={file}>
        <button type="button" aria-label={say('classPage.show', { label: name })} onClick={() => onShow(one)}>
          {name}
        </button>
      </th>
      {COLUMNS.map(([, id]) => {
        const over = mark.over.includes(id);
        return (
          <td key={id} className="class-number" data-measure={id} data-over={over || undefined}>
            {shown.measures[id]}
            {over && <span className="unseen">{say('classPage.over')}</span>}
          </td>
        );
      })}
      <td className="class-done">{shown.done}</td>
      <td className="class-broken">{shown.broken.join('; ')}</td>
    </tr>
  );
});

interface ClassTableProps extends Omit<RowProps, 'one'> {
  files: readonly MarkedFile[];
}

/** One row a file: what each attempt is off by, and which limits it breaks. */
export function ClassTable({ files, exercise, onShow }: ClassTableProps) {
  return (
    <table className="class-table">
      <caption className="unseen">{say('classPage.table')}</caption>
      <thead>
        <tr>
          <td rowSpan={2} className="class-left">
            {say('class.columns.label')}
          </td>
          <th colSpan={2} scope="colgroup">
            {say('class.group.platform')}
          </th>
          <th colSpan={2} scope="colgroup">
            {say('class.group.apex')}
          </th>
          <th rowSpan={2} scope="col">
            {say('classPage.short.angle')}
          </th>
          <th rowSpan={2} scope="col" className="class-left">
            {say('class.columns.done')}
          </th>
          <th rowSpan={2} scope="col" className="class-left">
            {say('class.columns.broken')}
          </th>
        </tr>
        <tr>
          {COLUMNS.slice(0, 4).map(([, id]) => (
            <th key={id} scope="col">
              {say(`classPage.short.${id}`)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {files.map((one) => (
          <Row key={one.file} one={one} exercise={exercise} onShow={onShow} />
        ))}
      </tbody>
    </table>
  );
}
