package withers.scorecard;

import java.util.Optional;
import java.util.Set;
import withers.id.SourceId;

/**
 * What is known of an animal of which the group lists a record.
 *
 * @param patient empty when it is dead, or was not seen lately
 * @param naming sources of the group that name it by an id of their own
 * @param heard sources that this rests on
 */
record Known(boolean dead, Optional<Patient> patient, Set<SourceId> naming, Set<SourceId> heard) {
  Known {
    naming = Set.copyOf(naming);
    heard = Set.copyOf(heard);
  }
}
