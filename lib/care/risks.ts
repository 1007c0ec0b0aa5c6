/** What makes a foot a foot at risk. The list is the rule book's. */
import { z } from 'zod';

export const RISKS = [
  'diabetes',
  'neuropathy',
  'arterial',
  'immunosuppressed',
  'dialysis',
  'anticoagulant',
  'prosthesis',
  'under12',
  'pregnant',
  'amputation',
] as const;
export const riskSchema = z.enum(RISKS);
export type Risk = z.infer<typeof riskSchema>;
