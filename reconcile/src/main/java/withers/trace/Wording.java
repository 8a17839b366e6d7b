package withers.trace;

import java.util.Locale;
import java.util.Optional;
import withers.custody.Cast;
import withers.fact.ContactRole;
import withers.fact.Fact;
import withers.fact.Party;
import withers.fact.ScanResult;
import withers.finding.Who;
import withers.history.Statement;
import withers.id.OrganisationId;
import withers.organisation.Directory;
import withers.organisation.Organisation;

/** Statements in plain words. People are "a private person", whoever they are. */
public record Wording(Directory directory, Cast cast) {

  /** What a statement says, or nothing for those that only help the machine. */
  Optional<String> of(Statement statement) {
    Fact fact = statement.fact();
    if (fact instanceof Fact.HandedOver handover) {
      return Optional.of(handover(statement, handover));
    }
    if (fact instanceof Fact.Registered registered) {
      Party primary = registered.contact(ContactRole.PRIMARY).orElseGet(Party.Unstated::new);
      return Optional.of("registered to " + who(statement, primary));
    }
    if (fact instanceof Fact.LookedUp asked) {
      return Optional.of(
          "%s answered: %s%s"
              .formatted(
                  asked.registry(),
                  words(asked.answer()),
                  asked.askedBy().map(", asked by %s"::formatted).orElse("")));
    }
    return ofOneParty(statement).or(() -> ofNobody(fact));
  }

  private String handover(Statement statement, Fact.HandedOver fact) {
    return "%s: from %s to %s"
        .formatted(
            words(fact.basis()), who(statement, fact.giver()), who(statement, fact.receiver()));
  }

  private Optional<String> ofOneParty(Statement statement) {
    Fact fact = statement.fact();
    if (fact instanceof Fact.Implanted implanted) {
      return Optional.of("implanted by " + who(statement, implanted.implanter()));
    }
    if (fact instanceof Fact.Attended attended) {
      return Optional.of("seen with " + who(statement, attended.client()));
    }
    if (fact instanceof Fact.Found found) {
      return Optional.of("reported found, with " + who(statement, found.holder()));
    }
    return fact instanceof Fact.Lost lost
        ? Optional.of("reported lost by " + who(statement, lost.reporter()))
        : Optional.empty();
  }

  private static Optional<String> ofNobody(Fact fact) {
    if (fact instanceof Fact.PairedWith paired) {
      return Optional.of("carries a second chip, " + paired.other());
    }
    if (fact instanceof Fact.Scanned scanned) {
      boolean read = scanned.result() == ScanResult.READ;
      return Optional.of(read ? "scanned and read" : "scanned, chip not detected");
    }
    if (fact instanceof Fact.RegistrationEnded) {
      return Optional.of("registration ended");
    }
    if (fact instanceof Fact.Reunited) {
      return Optional.of("gone home");
    }
    return fact instanceof Fact.Died ? Optional.of("died") : Optional.empty();
  }

  private String who(Statement statement, Party party) {
    return who(cast.who(statement, party));
  }

  /** Somebody in words, never a private person's details. */
  public String who(Who who) {
    if (who instanceof Who.Person) {
      return "a private person";
    }
    if (who instanceof Who.Organisation organisation) {
      return name(organisation.id());
    }
    return who instanceof Who.Outside outside ? outside.statedName() : "nobody named";
  }

  /** An organisation's name, or its id when the directory does not know it. */
  public String name(OrganisationId id) {
    return directory.find(id).map(Organisation::name).orElse(id.value());
  }

  private static String words(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
