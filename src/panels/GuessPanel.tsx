import { useState } from 'react';
import { type Evaluation, readingOf } from '../core/plan/evaluate.ts';
import { drillPoseOf, handOf } from '../core/plan/inHand.ts';
import { leanFrom } from '../core/plan/rehearse.ts';
import type { Guess as OwnGuess } from '../core/teaching/guesses.ts';
import type { HandStores } from '../state/held.ts';
import { useEvaluation, usePlan } from '../state/usePlan.ts';
import { useSelected } from '../state/useSelected.ts';
import { formatQuantity, type Unit } from '../words/format.ts';
import { say } from '../words/sayDrill.ts';
import { OwnGuesses } from './OwnGuesses.tsx';
import { RailGroup } from './RailGroup.tsx';
import { SpinField } from './SpinField.tsx';

const GUESSES = ['facial', 'palatal', 'angle'] as const;
type Guess = (typeof GUESSES)[number];
type Guesses = Readonly<Record<Guess, number>>;

const UNIT: Readonly<Record<Guess, Unit>> = { facial: 'mm', palatal: 'mm', angle: 'deg' };
/** Each as it is kept among the user's own guesses. */
const KIND = { facial: 'facial-wall-thinnest', palatal: 'palatal-wall-thinnest', angle: 'lean' } as const;
const FIRST: Guesses = { facial: 1.5, palatal: 1.5, angle: 0 };

/** What there really is: the thinnest walls beside the tool where it stands, and how far it leans off the plan. */
function truth(
  evaluation: Evaluation,
  planned: ReturnType<typeof drillPoseOf>,
): Readonly<Record<Guess, number | null>> {
  const { plan, readings } = evaluation;
  return {
    facial: readingOf(readings, 'facial-wall-thinnest').value,
    palatal: readingOf(readings, 'palatal-wall-thinnest').value,
    angle: leanFrom(handOf(plan).pose, planned).total,
  };
}

/** Guesses beside what there is, as far as there is anything. */
const ownGuesses = (guesses: Guesses, real: Readonly<Record<Guess, number | null>>): OwnGuess[] =>
  GUESSES.flatMap((guess) => {
    const found = real[guess];
    return found === null ? [] : [{ kind: KIND[guess], guessed: guesses[guess], found }];
  });

/** The numbers are covered until the hand has guessed them; then each guess stands beside what there is. */
export function GuessPanel({ stores }: { stores: HandStores }) {
  const { live, own } = stores;
  const guessing = useSelected(live, (state) => state.guessing);
  const evaluation = useEvaluation(stores);
  const planned = drillPoseOf(usePlan(stores.planned).pose);
  const [guesses, setGuesses] = useState<Guesses>(FIRST);
  const [seen, setSeen] = useState<Guesses | null>(null);
  const set = (change: { guessing: boolean }, kept: Guesses | null) => {
    live.set(change);
    setSeen(kept);
  };
  if (!guessing && !seen) {
    return (
      <RailGroup heading={say('guess.heading')} note="">
        <button type="button" className="rail-word" onClick={() => set({ guessing: true }, null)}>
          {say('guess.begin')}
        </button>
        <OwnGuesses own={own} />
      </RailGroup>
    );
  }
  const real = truth(evaluation, planned);
  // Only what was guessed under cover is kept.
  const see = () => {
    if (guessing) own.addGuesses(ownGuesses(guesses, real));
    set({ guessing: false }, guesses);
  };
  const text = (guess: Guess, value: number) => formatQuantity({ value, unit: UNIT[guess] });
  return (
    <RailGroup heading={say('guess.heading')} note="">
      <p className="rail-note">{say('guess.note')}</p>
      {GUESSES.map((guess) => (
        <div key={guess}>
          <SpinField
            name={say(`guess.${guess}`)}
            value={guesses[guess]}
            unit={UNIT[guess]}
            least={guess === 'angle' ? 0 : -5}
            most={guess === 'angle' ? 60 : 12}
            step={guess === 'angle' ? 1 : 0.1}
            page={guess === 'angle' ? 5 : 0.5}
            onCommit={(value) => setGuesses({ ...guesses, [guess]: value })}
          />
          {seen && (
            <p className="rail-note" data-guess={guess}>
              {real[guess] === null
                ? say('guess.none', { guess: text(guess, seen[guess]) })
                : say('guess.row', {
                    guess: text(guess, seen[guess]),
                    value: text(guess, real[guess] ?? 0),
                    off: text(guess, Math.abs(seen[guess] - (real[guess] ?? 0))),
                  })}
            </p>
          )}
        </div>
      ))}
      <div className="rail-words">
        <button type="button" className="rail-word" onClick={see}>
          {say('guess.see')}
        </button>
        <button type="button" className="rail-word" onClick={() => set({ guessing: false }, null)}>
          {say('guess.end')}
        </button>
      </div>
      {seen && <OwnGuesses own={own} />}
    </RailGroup>
  );
}
