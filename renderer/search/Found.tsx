/** What a goal seek found: the account, the candidates, the chosen one. */

import { useLook } from '../look.ts';
import { searchText } from '../strings/search.ts';
import { Candidates } from './Candidates.tsx';
import { Detail } from './Detail.tsx';
import { type SeekRun, shownResult, useSearch } from './store.ts';

const words = searchText.found;

/** The section; nothing before the first designs are ranked. */
export function Found({ run }: { readonly run: SeekRun }) {
  const chosen = useSearch((state) => state.chosen);
  useLook();
  const { result, solved } = run.news;
  if (!result) return null;
  const list = chosen && shownResult(run, chosen.from);
  const candidate = list?.candidates.find(({ rank }) => rank === chosen?.rank);
  return (
    <section className="search-result" aria-label={words.title}>
      <h2>{words.title}</h2>
      {solved && <p className="quiet">{words.ofSolved(solved.evaluated)}</p>}
      <ul className="search-account">
        {(solved ?? result).account.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <p className="quiet">{words.counts(result.evaluated, result.meeting, result.holes)}</p>
      {solved && solved.candidates.length > 0 && (
        <>
          <h3>{words.solved}</h3>
          <p className="quiet">{words.solvedHelp}</p>
          <Candidates run={run} result={solved} from="solved" />
        </>
      )}
      {result.candidates.length > 0 && (
        <>
          <h3>{words.estimates}</h3>
          <Candidates run={run} result={result} from="formula" />
          <p className="quiet">{words.scatter}</p>
        </>
      )}
      {chosen && candidate && (
        <Detail key={`${chosen.from} ${chosen.rank}`} run={run} chosen={chosen} candidate={candidate} />
      )}
    </section>
  );
}
