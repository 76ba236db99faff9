export interface Notice {
  readonly id: number;
  readonly tone: 'good' | 'bad';
  readonly text: string;
  /** What can be done about it, as a button. */
  readonly action?: { readonly label: string; readonly run: () => void };
}

/** Short messages that are also read out; they stay until dismissed or five others came. */
export class Notices {
  list: readonly Notice[] = $state.raw([]);
  #next = 1;

  say(tone: Notice['tone'], text: string, action?: Notice['action']): void {
    const notice: Notice = { id: this.#next++, tone, text, ...(action ? { action } : {}) };
    this.list = [...this.list.filter((other) => other.text !== text), notice].slice(-5);
  }

  dismiss(id: number): void {
    this.list = this.list.filter((notice) => notice.id !== id);
  }
}
