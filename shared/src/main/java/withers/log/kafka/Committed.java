package withers.log.kafka;

import withers.log.Contents;
import withers.log.ImportMarker;

/**
 * A visible import and what it brought.
 *
 * @param attempt tells its chunks from those of an attempt at the same import that was swept away
 */
record Committed(ImportMarker marker, Contents contents, Attempt attempt) {}
