/** The id of a setting or of a part where it stands, as a person says it: "1 left", "rib 2". */
export const said = (id: string): string => id.replaceAll('-', ' ');
