import { Link } from 'react-router';
import { Page } from '../../ui/page.js';
import text from '../../../../deploy/alarms.md?raw';

const lines = text.split('\n').filter((line) => line.startsWith('|'));
const cellsOf = (line: string): string[] =>
  line
    .split('|')
    .slice(1, -1)
    .map((cell) => cell.trim());
const [headings = [], , ...alarms] = lines.map(cellsOf);

/** What to do at each alarm: the page that whoever runs the house has beside it. */
export function Alarms() {
  return (
    <Page
      title="What to do at each alarm"
      lede={
        <>
          The figures stand at /metrics of every API and worker, most of them under <Link to="/house">How the house is</Link>. Limits are to
          begin with; a house knows its own after a month.
        </>
      }
    >
      <table className="blocks">
        <thead>
          <tr>
            {headings.map((each) => (
              <th key={each} scope="col">
                {each}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {alarms.map((cells) => (
            <tr key={cells[0]}>
              {cells.map((cell, place) => (
                <td key={headings[place]} data-name={headings[place]}>
                  <Marked text={cell} isName={place === 0} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Page>
  );
}

/** What stands between backticks is a name or a command, to be typed as it is. */
function Marked({ text, isName }: { text: string; isName: boolean }) {
  if (isName) return <b>{text}</b>;
  return (
    <span>
      {text.split('`').map((part, place) =>
        place % 2 === 0 ? (
          part
        ) : (
          <code key={place} className="anywhere">
            {part}
          </code>
        ),
      )}
    </span>
  );
}
