/** What may take the cursor in place of something in it that went away. */
const PLACES = 'section, [role=group], dialog, details, nav, header, main';

/** How something is known again when it comes back: by its kind and what it says. */
const nameOf = (element: HTMLElement): string =>
  [element.tagName, element.id, element.ariaLabel, element.textContent.trim()].join('|');

const gone = (element: HTMLElement): boolean =>
  !element.isConnected || element.matches(':disabled');

/** The elements around one, nearest first. */
const around = (element: HTMLElement): HTMLElement[] => {
  const { parentElement } = element;
  return parentElement ? [parentElement, ...around(parentElement)] : [];
};

/** Takes the cursor somewhere without moving the page, unless it would not be seen there. */
const focusInSight = (target: HTMLElement): void => {
  target.focus({ preventScroll: true });
  const { top, bottom } = target.getBoundingClientRect();
  if (bottom <= 0 || top >= innerHeight) target.scrollIntoView({ block: 'nearest' });
};

/** Puts the cursor on something that otherwise takes none, for as long as it stays there. */
const rest = (place: HTMLElement): void => {
  const target = place.tagName === 'DETAILS' ? (place.querySelector('summary') ?? place) : place;
  if (target.tabIndex < 0 && !target.hasAttribute('tabindex')) {
    target.tabIndex = -1;
    target.addEventListener('blur', () => target.removeAttribute('tabindex'), { once: true });
  }
  // What is small is brought into sight; a section may be taller than the screen.
  if (target.matches(PLACES)) focusInSight(target);
  else target.focus();
};

/**
 * Keeps the cursor of the keyboard where work goes on. A button that is pressed is often replaced
 * by what it started, a sheet by the one that follows from a new value: the browser then forgets
 * where the cursor was. It goes to the section around, and back to the same thing if that returns
 * while it waits there. From a notice, which stands in no section, it goes back to where it came
 * from. Returns what ends it.
 */
export const keepCursor = (page: Document): (() => void) => {
  let last: HTMLElement | null = null;
  /** Where the cursor can go when that is gone, best first. */
  let places: readonly HTMLElement[] = [];
  /** The same for what stands in no section, and the way back there. */
  let home: readonly HTMLElement[] = [];
  /** What was lost, where it was, and where the cursor waits for it. */
  let lost: {
    readonly kind: string;
    readonly name: string;
    readonly place: HTMLElement;
    readonly waits: Element | null;
  } | null = null;
  let soon: ReturnType<typeof setTimeout> | undefined;

  const arrived = ({ target }: FocusEvent) => {
    if (!(target instanceof HTMLElement)) return;
    last = target;
    const here = around(target).filter((one) => one.matches(PLACES));
    if (here.length > 0) home = [target, ...here];
    places = here.length > 0 ? here : home;
    lost = null;
  };
  // Whoever taps beside everything wants the cursor nowhere.
  const tapped = () => {
    last = null;
    lost = null;
  };

  const giveBack = ({ kind, name, place }: NonNullable<typeof lost>) => {
    const same = [...place.querySelectorAll<HTMLElement>(kind)].find(
      (one) => !gone(one) && nameOf(one) === name,
    );
    if (same) focusInSight(same);
  };

  const look = () => {
    if (lost !== null && page.activeElement === lost.waits) giveBack(lost);
    if (last === null || !gone(last)) return;
    const place = places.find((one) => one.isConnected);
    // Whoever took it away may have found a better place.
    if (place === undefined || ![page.body, last].includes(page.activeElement as HTMLElement))
      return;
    const [kind, name] = [last.tagName, nameOf(last)];
    rest(place);
    lost = { kind, name, place, waits: page.activeElement };
  };
  const changed = () => {
    clearTimeout(soon);
    soon = setTimeout(look);
  };

  page.addEventListener('focusin', arrived);
  page.addEventListener('pointerdown', tapped);
  const seen = new MutationObserver(changed);
  seen.observe(page.body, {
    childList: true,
    subtree: true,
    attributes: true,
    attributeFilter: ['disabled'],
  });
  return () => {
    clearTimeout(soon);
    seen.disconnect();
    page.removeEventListener('focusin', arrived);
    page.removeEventListener('pointerdown', tapped);
  };
};
