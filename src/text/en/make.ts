export const make = {
  unknownFamily: (family: string, known: string) => ({
    message: `The design asks for the fixture family "${family}"; known are ${known}.`,
    fix: `Set fixture.family to one of ${known}, or open the design with a program that knows "${family}".`,
  }),
} as const;
