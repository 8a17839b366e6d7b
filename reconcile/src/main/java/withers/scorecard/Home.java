package withers.scorecard;

import java.time.LocalDate;
import java.util.Collection;
import java.util.Collections;
import java.util.HashSet;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import withers.id.OrganisationId;

/**
 * An animal's own clinic: the one that saw it on the most days.
 *
 * @param clinics that one, or several that saw it on equally many
 */
record Home(NavigableSet<OrganisationId> clinics) {
  Home {
    clinics = Collections.unmodifiableNavigableSet(new TreeSet<>(clinics));
  }

  static Home of(Collection<ClinicRecords.Sight> sights) {
    Map<OrganisationId, Set<LocalDate>> days = new TreeMap<>();
    sights.forEach(s -> days.computeIfAbsent(s.clinic(), c -> new HashSet<>()).add(s.day()));
    int most = days.values().stream().mapToInt(Set::size).max().orElse(0);
    NavigableSet<OrganisationId> clinics = new TreeSet<>(days.keySet());
    clinics.removeIf(clinic -> days.getOrDefault(clinic, Set.of()).size() < most);
    return new Home(clinics);
  }

  /** Whether it is a clinic of the group. */
  Told isIn(Group group) {
    if (group.clinics().containsAll(clinics)) {
      return Told.YES;
    }
    return Collections.disjoint(group.clinics(), clinics) ? Told.NO : Told.NOT_KNOWN;
  }
}
