import type { View } from '../../state/session.ts';
import { say } from '../../words/saySheet.ts';

/** Views of the model that stand on the sheet. */
export const SHEET_VIEWS = ['mesial', 'facial'] as const satisfies readonly View[];

/** A picture of the model, by its address. */
export interface SheetPicture {
  readonly view: View;
  readonly address: string;
}

/** Pictures of the model side by side; a word in their place while there are none. */
export function SheetPictures({ pictures }: { pictures: readonly SheetPicture[] | null }) {
  if (pictures?.length === 0) return <p>{say('sheet.noPictures')}</p>;
  return (
    <section>
      <h3>{say('sheet.pictures')}</h3>
      <div className="paper-pictures">
        {SHEET_VIEWS.map((view) => {
          const taken = pictures?.find((one) => one.view === view);
          return (
            <figure key={view}>
              {taken ? (
                <img src={taken.address} alt={say(`sheet.picture.${view}`)} data-picture={view} />
              ) : (
                <div className="paper-no-picture">{say('sheet.pictureComes')}</div>
              )}
              <figcaption>{say(`sheet.picture.${view}`)}</figcaption>
            </figure>
          );
        })}
      </div>
    </section>
  );
}
