/** The colours of the drawings, taken from the style sheet, so that both papers serve. */
export interface Paints {
  readonly ink: string;
  readonly steel: string;
  readonly fixture: string;
  readonly machine: string;
  readonly belt: string;
  readonly bad: string;
}

export const paints = (element: Element): Paints => {
  const style = getComputedStyle(element);
  const of = (name: string): string => style.getPropertyValue(name).trim();
  return {
    ink: of('--ink'),
    steel: of('--steel'),
    fixture: of('--fixture'),
    machine: of('--machine'),
    belt: of('--belt'),
    bad: of('--bad'),
  };
};
