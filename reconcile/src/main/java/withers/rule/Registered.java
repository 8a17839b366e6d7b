package withers.rule;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import withers.custody.Cast;
import withers.custody.Versions;
import withers.finding.Compared;
import withers.finding.Finding.Registration;
import withers.finding.FindingKind;
import withers.finding.Who;
import withers.registration.LiveRegistration;

/** Writes down whom registrations name, and how they compare with the keeper. */
record Registered(Dossier dossier) {

  /** Kinds of which an answer to "the same person?" is a reason. */
  private static final Set<FindingKind> COMPARING =
      EnumSet.of(
          FindingKind.LOST_UNREACHABLE,
          FindingKind.CHIPS_DIVERGE,
          FindingKind.CONTACT_BEHIND,
          FindingKind.MISTYPED_REGISTRATION,
          FindingKind.RECORDS_BEHIND,
          FindingKind.REGISTRIES_DISAGREE,
          FindingKind.DETAILS_DIFFER);

  /** Compared with the version of the keeper that the kind is about. */
  Registration of(LiveRegistration registration, FindingKind kind) {
    if (!COMPARING.contains(kind)) {
      return of(registration, Optional.empty());
    }
    return kind == FindingKind.DETAILS_DIFFER
        ? of(registration, versions().map(versions -> versions.newest().who()))
        : of(registration);
  }

  /** Compared with the version of the keeper that comes closest. */
  Registration of(LiveRegistration registration) {
    return of(
        registration, versions().map(versions -> versions.closest(registration.primary()).who()));
  }

  private Optional<Versions> versions() {
    return dossier.keeper().map(Keeper::versions);
  }

  private Registration of(LiveRegistration registration, Optional<Who> version) {
    return new Registration(
        registration.chip(),
        registration.registry(),
        registration.primary(),
        version.flatMap(who -> compared(who, registration.primary())));
  }

  /** Nothing when a human's verdict outranks it. */
  private Optional<Compared> compared(Who one, Who other) {
    Cast cast = dossier.cast();
    return cast.people()
        .weigh(one, other)
        .map(Compared::of)
        .filter(compared -> compared.verdict() == cast.verdict(one, other));
  }
}
