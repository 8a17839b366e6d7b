package withers.settled;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import withers.cases.Settlement.Registration;
import withers.cases.Settlement.RightAsItIs;
import withers.fact.Party;
import withers.finding.Finding;
import withers.finding.Who;
import withers.matching.Verdict;

/**
 * What a finding said when somebody found it right as it is. It is still that one while the
 * custodian is the same person, or none again, and the registrations name the same people, with the
 * same details.
 *
 * @param compare compares two people
 */
public record Basis(BiFunction<Who, Who, Verdict> compare) {

  /** What a finding says. */
  public static RightAsItIs of(Finding finding) {
    return new RightAsItIs(
        party(finding.custodian()),
        finding.registered().stream()
            .map(r -> new Registration(r.chip(), r.registry(), party(r.primary())))
            .toList(),
        told(finding));
  }

  private static List<String> told(Finding finding) {
    List<String> told = new ArrayList<>(finding.fields());
    finding.damage().ifPresent(damage -> told.add(damage.written()));
    finding.stock().ifPresent(stock -> told.add(Long.toString(stock.unaccounted())));
    return told;
  }

  private static Party party(Who who) {
    if (who instanceof Who.Person person) {
      return new Party.Contact(person.reference(), Optional.empty());
    }
    if (who instanceof Who.Organisation organisation) {
      return new Party.Organisation(organisation.id().value());
    }
    return who instanceof Who.Outside outside
        ? new Party.Organisation(outside.statedName())
        : new Party.Unstated();
  }

  /** Whether a finding still says what it said then. */
  public boolean isStill(RightAsItIs then, Finding now) {
    return told(now).equals(then.told())
        && verdict(then.custodian(), now.custodian()).isSamePerson()
        && areStill(then.registered(), now.registered());
  }

  private boolean areStill(List<Registration> then, List<Finding.Registration> now) {
    if (then.size() != now.size()) {
      return false;
    }
    for (int i = 0; i < then.size(); i++) {
      if (!isStill(then.get(i), now.get(i))) {
        return false;
      }
    }
    return true;
  }

  private boolean isStill(Registration then, Finding.Registration now) {
    return then.chip().equals(now.chip())
        && then.registry().equals(now.registry())
        && verdict(then.primary(), now.primary()) == Verdict.SAME;
  }

  private Verdict verdict(Party then, Who now) {
    if (then instanceof Party.Contact contact && now instanceof Who.Person person) {
      Who.Person former = new Who.Person(contact.reference(), person.source(), person.suppliedBy());
      return compare.apply(former, person);
    }
    return then.equals(party(now)) ? Verdict.SAME : Verdict.DIFFERENT;
  }
}
