import { FormattedMessage } from 'react-intl';

interface Props {
  readonly name: string;
  readonly colour: string;
  readonly logo: string | null;
  readonly contact: string;
}

/** The head of a report as it will be: paper in every theme, as the report is. */
export function HeadOfReport({ name, colour, logo, contact }: Props) {
  return (
    <figure className="report-head">
      <figcaption className="soft">
        <FormattedMessage id="setup.brand.head" />
      </figcaption>
      <div className="report-head-paper" style={{ borderColor: colour }}>
        {logo ? <img src={logo} alt={name} /> : <b style={{ color: colour }}>{name}</b>}
        <span>
          <FormattedMessage id="setup.brand.example" />
          {contact && (
            <>
              <br />
              {contact}
            </>
          )}
        </span>
      </div>
    </figure>
  );
}
