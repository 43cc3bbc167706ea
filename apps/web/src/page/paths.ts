/** Where the pages of the office are: one place for those that lead from one feature to another. */
export const paths = {
  portfolio: '/',
  month: '/month',
  findings: '/findings',
  findingPrecision: '/findings/usefulness',
  findingsWeek: '/findings/week',
  finding: (id: string): string => `/findings/${id}`,
  property: (id: string, month?: string | null): string => `/properties/${id}${month ? `?month=${month}` : ''}`,
  cabinetCard: (propertyId: string, controllerId: string): string => `/cabinet/${propertyId}/${controllerId}`,
  ruleChange: (supplierId: string): string => `/rule-change/${supplierId}`,
  rainPauses: '/rain',
  routes: '/routes',
  reports: '/reports',
  companyMonth: '/reports/company',
  setup: '/setup',
} as const;

/** A report as a file; the preview is the PDF that is sent. */
export const reportFile = (id: string, kind: 'pdf' | 'csv' | 'xlsx'): string => `/api/reports/${id}/report.${kind}`;
