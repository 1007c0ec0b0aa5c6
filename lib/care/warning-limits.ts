/**
 * Limits of the warning signs that a phone knows by itself, without waiting for the clinic; the rule book begins with the
 * same numbers. A clinic that changes its own has them judged when the answers have come.
 */
export const WARNING_LIMITS = {
  /** SIRS criteria (Bone 1992): fever. */
  feverC: 38,
  /** SIRS criteria (Bone 1992): too cold, together with another sign. */
  tooColdC: 36,
  /** Until then a numb toe is the injection. Common practice. */
  numbHours: 24,
} as const;
