package withers.rule;

import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import withers.chip.ChipNumber;
import withers.chip.NumberRange;
import withers.history.Sources;
import withers.id.OrganisationId;
import withers.organisation.Directory;
import withers.organisation.Organisation;

/** How new each registry's exports are, looked up once. Immutable. */
record Currentness(List<Organisation> registries, Map<OrganisationId, LocalDate> newest) {

  static Currentness of(Directory directory, Sources sources) {
    return new Currentness(directory.registries(), sources.newestOfRegistries());
  }

  /**
   * Whether all who may hold a number, or speak of it, have exported on or after a day; nobody
   * waits for those that never export.
   */
  boolean isCurrent(ChipNumber chip, Collection<OrganisationId> speaking, LocalDate day) {
    for (OrganisationId one : speaking) {
      if (isBehind(one, day)) {
        return false;
      }
    }
    for (Organisation one : registries) {
      if (isBehind(one.id(), day) && (one.registers().isEmpty() || isGiven(one, chip))) {
        return false;
      }
    }
    return true;
  }

  private boolean isBehind(OrganisationId registry, LocalDate day) {
    LocalDate exported = newest.get(registry);
    return exported != null && exported.isBefore(day);
  }

  /**
   * Whether a number is registered where one would ask: with one that is given its range, unless
   * nobody is.
   */
  boolean isWhereAsked(ChipNumber chip, Collection<OrganisationId> registered) {
    boolean isGivenToAny = false;
    for (Organisation one : registries) {
      if (isGiven(one, chip)) {
        isGivenToAny = true;
        if (registered.contains(one.id())) {
          return true;
        }
      }
    }
    return !isGivenToAny;
  }

  private static boolean isGiven(Organisation registry, ChipNumber chip) {
    for (NumberRange range : registry.registers()) {
      if (range.contains(chip)) {
        return true;
      }
    }
    return false;
  }
}
