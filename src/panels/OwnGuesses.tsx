import { type GuessKind, guessSummaries } from '../core/teaching/guesses.ts';
import type { OwnStore } from '../state/own.ts';
import { useSelected } from '../state/useSelected.ts';
import type { Unit } from '../words/format.ts';
import { presentGuesses } from '../words/presentBench.ts';
import { say } from '../words/sayTeach.ts';

const unitOf = (kind: GuessKind): Unit => (kind === 'lean' ? 'deg' : 'mm');

/** How far the user's guesses have been off so far, kept on this machine: mean and spread of each kind. */
export function OwnGuesses({ own }: { own: OwnStore }) {
  const guesses = useSelected(own, (state) => state.guesses);
  if (guesses.length === 0) return null;
  return (
    <div data-own-guesses={guesses.length}>
      <p className="rail-note">{say('guesses.heading')}</p>
      {presentGuesses(guessSummaries(guesses), unitOf).map(({ kind, text, better }) => (
        <p key={kind} className="rail-note">
          {text}
          {better === '' ? null : ` (${better})`}
        </p>
      ))}
      <button type="button" className="rail-word" onClick={own.forgetGuesses}>
        {say('guesses.forget')}
      </button>
    </div>
  );
}
