import type { Issue } from '../../core/issue.ts';
import { text } from '../../text/index.ts';

export interface Notice {
  readonly id: number;
  readonly tone: 'good' | 'bad';
  readonly text: string;
  /** What can be done about it, as a button. */
  readonly action?: { readonly label: string; readonly run: () => void };
}

/** How long good news that asks for nothing stays, ms: it covers what lies below it. */
const STAYS = 8000;

/** How many fields that were left out are named. */
const NAMED = 4;

/** Short messages that are also read out; what asks for something stays until it is dismissed. */
export class Notices {
  list: readonly Notice[] = $state.raw([]);
  #next = 1;

  say(tone: Notice['tone'], text: string, action?: Notice['action']): void {
    const notice: Notice = { id: this.#next++, tone, text, ...(action ? { action } : {}) };
    this.list = [...this.list.filter((other) => other.text !== text), notice].slice(-5);
    if (tone === 'good' && !action) setTimeout(() => this.dismiss(notice.id), STAYS);
  }

  /** Says that something was not done, and what stopped it: warnings are told in front of that. */
  refuse(said: string, issues: readonly Issue[]): void {
    const first = issues.find(({ severity }) => severity === 'error') ?? issues[0];
    this.say('bad', first ? `${said} ${first.message} ${first.fix}` : said);
  }

  /** Says which fields of a file are not in what was made of it: saved again, they would be gone. */
  leftOut(issues: readonly Issue[]): void {
    const fields = issues.filter(({ code }) => code === 'unknown-field');
    if (fields.length === 0) return;
    const said = fields.slice(0, NAMED).map(({ path }) => path);
    this.say('bad', text.app.designs.leftOut(said, fields.length - said.length));
  }

  dismiss(id: number): void {
    this.list = this.list.filter((notice) => notice.id !== id);
  }
}
