import { z } from 'zod';
import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { ownCardDrawing } from '../card/own-card-drawing';
import { cardCode, parseSerial } from '../card/serial';
import { type Paper, sheetLayout } from '../card/sheet-layout';
import { SHEET_WORDS_EN } from '../card/sheet-words';
import { SHEET_WORDS_ES } from '../card/sheet-words-es';
import { planSchema } from '../care/plan';
import { now } from '../edges/clock/now';
import { episodeCards } from '../edges/db/episode-cards';
import { noteAudit } from '../edges/db/note-audit';
import { readRuleRows, type RuleRows } from '../edges/db/read-rule-rows';
import { addressModules, qrModules } from '../edges/paper/qr-modules';
import { printedWidths, sheetPdf } from '../edges/paper/sheet-pdf';
import { hashSecret } from '../edges/session/secret';
import type { AftercareFacts } from '../report/aftercare-facts';
import { aftercareSheet } from '../report/aftercare-sheet';
import { type Answer, refusal, refusedBy } from './answer';
import { ruleBookOf } from './assess-rows';
import { findResource } from './find-resource';
import { linkAddress } from './hand-link';
import { store } from './store';

/** The link's secret is nowhere here: the page that was told it tells it once more. Null prints the card alone. */
const bodySchema = z.strictObject({ secret: z.string().nullable(), serial: z.string() });

/** The card and, with a link that opens, the aftercare sheet behind it, as one PDF. */
export async function commandPrintSheet(actor: Actor, headers: Headers, episodeId: string, body: unknown): Promise<Answer> {
  const { database, settings } = await store();
  const may = guard(actor, 'episode.handOut', await findResource(database, episodeId));
  if (!may.allowed || !('staffId' in actor)) return may.allowed ? refusal(404, 'notFound') : refusedBy(may);
  const read = bodySchema.safeParse(body);
  if (!read.success) return refusal(400, 'notUnderstood');
  const { secret, serial } = read.data;
  const rows = await readRuleRows(database, may.episodeId);
  const at = now();
  if (secret !== null && (hashSecret(secret) !== rows.linkTokenHash || rows.linkEndsAt <= at)) return refusal(409, 'linkEnded');
  const card = (await episodeCards(database, may.episodeId)).find((one) => one.serial === serial && one.retiredAt === null);
  const known = parseSerial(card?.serial ?? '');
  if ('problem' in known) return refusal(404, 'notFound');
  const paper = rows.clinic.paper as Paper;
  const front = sheetLayout(paper, ownCardDrawing(known.serial, qrModules(cardCode(known.serial))), rows.language === 'es' ? SHEET_WORDS_ES : SHEET_WORDS_EN, rows.clinic);
  const back = secret === null ? [] : [aftercareSheet(paper, factsOf(rows, linkAddress(settings, headers, secret)), await printedWidths())];
  const bytes = Uint8Array.from(await sheetPdf(front, ...back));
  await noteAudit(database, { clinicId: actor.clinicId, episodeId: may.episodeId, actor: actorName(actor), action: 'sheet.print', rule: may.rule, at });
  const name = rows.caseCode.replace(/[^\w-]/g, '_');
  return { status: 200, bytes, headers: { 'content-type': 'application/pdf', 'content-disposition': `attachment; filename="${name}.pdf"` } };
}

function factsOf(rows: RuleRows, address: string): AftercareFacts {
  const { caseCode, timeZone, language, procedure, plans, clinic } = rows;
  if (procedure === null) throw new Error(`The episode ${rows.id} has no procedure.`);
  const { limits } = ruleBookOf(rows);
  const { name, phone, emergencyPhone, openingHours } = clinic;
  return {
    language: language === 'es' ? 'es' : 'en',
    caseCode,
    foot: procedure.foot as AftercareFacts['foot'],
    procedureAt: procedure.at.toISOString(),
    timeZone,
    plan: planSchema.parse(plans.length > 0 ? JSON.parse(plans[0].json) : {}),
    clinic: { name, phone, emergencyPhone, openingHours },
    feverC: limits['fever.celsius'],
    numbHours: limits['numb.hours'],
    address,
    code: addressModules(address),
  };
}
