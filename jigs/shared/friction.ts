/** Friction of belt on blade, least and greatest: common practice, no source. */
export const FRICTION = [0.2, 0.6] as const;
