/** What the patient's calendar says, in both languages. Whoever looks at the phone may read it: no word of an illness. */
export interface CalendarWords {
  readonly name: string;
  readonly dressingOff: string;
  readonly dressingOffMore: string;
  readonly checkIn: string;
  readonly checkInMore: string;
  readonly call: (clinic: string, phone: string) => string;
}

export const CALENDAR_WORDS: Readonly<Record<'en' | 'es', CalendarWords>> = {
  en: {
    name: 'Toe: photos for the clinic',
    dressingOff: 'First dressing comes off',
    dressingOffMore: 'Leave it on until now. Then do as your sheet says.',
    checkIn: 'Photo and questions for the clinic',
    checkInMore: 'After soaking, lay the card around the toe and open your personal link.',
    call: (clinic, phone) => `If anything worries you, do not wait for this day: ${clinic}, ${phone}.`,
  },
  es: {
    name: 'Dedo: fotos para la clínica',
    dressingOff: 'Se quita el primer vendaje',
    dressingOffMore: 'Déjelo puesto hasta ahora. Después, siga su hoja.',
    checkIn: 'Foto y preguntas para la clínica',
    checkInMore: 'Después del baño, ponga la tarjeta alrededor del dedo y abra su enlace personal.',
    call: (clinic, phone) => `Si algo le preocupa, no espere a este día: ${clinic}, ${phone}.`,
  },
};
