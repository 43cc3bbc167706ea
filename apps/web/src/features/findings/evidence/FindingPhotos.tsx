import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { PhotosOfFindingFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../page/use-masked.js';

export const photosOfFinding = graphql(`
  fragment PhotosOfFinding on Finding {
    id
    photos {
      id
      takenAt
      latitude
      longitude
      arrivedAt
      word
      width
      height
    }
  }
`);

/** A ten-thousandth of a degree is some 11 m: about as near as a phone knows where it is; one more is kept so that nothing is lost. */
const DECIMALS = 5;
const degrees = (value: number): string => value.toFixed(DECIMALS);

/** The photos that show a finding; one whose picture has not arrived is told of. */
export function FindingPhotos({ finding }: { readonly finding: FragmentType<PhotosOfFindingFragment> }) {
  const intl = useIntl();
  const { moment } = useFormats();
  const { photos } = useMasked(photosOfFinding, finding);
  if (photos.length === 0) return null;
  return (
    <>
      <h2 className="small">
        <FormattedMessage id="findings.photos" />
      </h2>
      <ul className="finding-photos">
        {photos.map(({ id, takenAt, latitude, longitude, arrivedAt, word, width, height }) => (
          <li key={id}>
            {arrivedAt ? (
              <a href={`/api/photos/${id}`}>
                <img
                  src={`/api/photos/${id}`}
                  alt={intl.formatMessage({ id: 'findings.photo' }, { day: moment(takenAt), word: word ?? 'none' })}
                  width={width ?? undefined}
                  height={height ?? undefined}
                  loading="lazy"
                />
              </a>
            ) : (
              <FormattedMessage id="findings.photo.onPhone" />
            )}
            {typeof latitude === 'number' && typeof longitude === 'number' && (
              <p className="soft xs">
                <FormattedMessage id="findings.photo.place" values={{ latitude: degrees(latitude), longitude: degrees(longitude) }} />
              </p>
            )}
          </li>
        ))}
      </ul>
    </>
  );
}
