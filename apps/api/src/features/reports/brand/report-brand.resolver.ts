import { Args, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { judgeValues, type Rule, text } from '../../../platform/problems/judge-values.js';
import { logoOf } from './logo.js';
import { reportBrands } from './report-brand.repository.js';
import { ReportBrand, ReportBrandInput, showBrand } from './report-brand.type.js';

const COLOUR = /^#[0-9a-f]{6}$/;
/** Relative luminance above which a colour's name and line cannot be read on white (WCAG 2.2, 1.4.11: 3 to 1). */
const LIGHTEST = 1.05 / 3 - 0.05;

const MOST_OF_NAME = 80;
const MOST_OF_CONTACT = 300;
const MOST_LINES = 4;

/** It heads every page, and is the name of every mail's sender: one line of it has room there. */
const nameOfHead: Rule = (value: string) =>
  value.length > MOST_OF_NAME || /[\p{Cc}\u2028\u2029]/u.test(value.trim()) ? `one line of at most ${MOST_OF_NAME} characters` : null;

const contactOfHead: Rule = (value: string) =>
  value.length > MOST_OF_CONTACT || value.trim().split('\n').length > MOST_LINES
    ? `at most ${MOST_OF_CONTACT} characters on ${MOST_LINES} lines`
    : text(value as never);

/** The dress of reports: the office's own name, colour, logo and address. */
@Resolver(() => ReportBrand)
export class ReportBrandResolver {
  @Allow(Permission.WriteReports)
  @Query(() => ReportBrand, { name: 'reportBrand' })
  async own(@Tx() tx: OrganizationTransaction): Promise<ReportBrand> {
    return showBrand(await reportBrands.own(tx));
  }

  @Allow(Permission.WriteReports)
  @Mutation(() => ReportBrand)
  async changeReportBrand(
    @Tx() tx: OrganizationTransaction,
    @Args('input', { type: () => ReportBrandInput }) input: ReportBrandInput,
  ): Promise<ReportBrand> {
    judgeValues(input, { name: nameOfHead, contact: contactOfHead });
    const [name, contact] = [input.name, input.contact].map((words) => words?.trim() || null) as [string | null, string | null];
    const colour = colourOf(input.colour);
    return showBrand(await reportBrands.keep(tx, { name, colour, logo: await logoFrom(tx, input.logo), contact }));
  }
}

/** A colour that can be read on white, or null for the report's own. */
function colourOf(given: string | null | undefined): string | null {
  const colour = given?.trim().toLowerCase();
  if (!colour) return null;
  if (!COLOUR.test(colour)) throw platformProblems.valueRefused({ field: 'colour', found: colour, expected: '#rrggbb' });
  if (luminance(colour) > LIGHTEST)
    throw platformProblems.valueRefused({ field: 'colour', found: colour, expected: 'a darker colour, that can be read on white' });
  return colour;
}

/** Left out, the logo stays; null takes it away. */
async function logoFrom(tx: OrganizationTransaction, given: string | null | undefined): Promise<Buffer | null> {
  if (given === undefined) return (await reportBrands.own(tx))?.logo ?? null;
  return given === null ? null : logoOf(given);
}

/** Relative luminance of a colour (WCAG 2.2). */
function luminance(colour: string): number {
  const [red, green, blue] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
