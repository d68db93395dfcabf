import { say } from '../words/say.ts';

/** In place of what has failed: a calm message, and another try. */
export function Failed({ name, onRetry }: { name: string; onRetry: () => void }) {
  return (
    <div className="calm" role="alert">
      <p>{say('panel.failed', { panel: name })}</p>
      <button type="button" onClick={onRetry}>
        {say('panel.retry')}
      </button>
    </div>
  );
}
