package withers.codec.finding;

import withers.cases.Anchor;
import withers.finding.Compared;
import withers.finding.Evidence;
import withers.finding.Finding;
import withers.finding.OpenQuestion;
import withers.finding.Priority;
import withers.finding.Who;
import withers.packed.Packer;

/**
 * Writes findings and questions as {@link FindingUnpacker} reads them: what many have in common by
 * a number, the rest as it is.
 */
record FindingPacker(Packer out) {

  /** What {@link Who} it is. */
  enum Tag {
    PERSON,
    OUTSIDE,
    OTHER
  }

  void finding(Finding finding) {
    out.common(finding.kind());
    anchor(finding.anchor());
    out.each(finding.chips(), out::chip);
    out.common(finding.species());
    out.optional(finding.animalName(), out::text);
    out.common(finding.actor());
    out.optional(finding.actorRecord(), key -> out.text(key.value()));
    who(finding.custodian());
    out.each(finding.registered(), this::registration);
    out.each(finding.fields(), out::common);
    out.common(finding.certainty());
    priority(finding.priority());
    out.each(finding.evidence(), this::evidence);
    out.optional(finding.detail(), out::common);
  }

  void question(OpenQuestion question) {
    out.each(question.chips(), out::chip);
    out.common(question.species());
    out.optional(question.animalName(), out::text);
    out.common(question.asked());
    out.text(question.record().value());
    person(question.keeper());
    out.common(question.since());
    out.each(question.registered(), this::registration);
  }

  private void anchor(Anchor anchor) {
    out.flag(anchor instanceof Anchor.Chip);
    if (anchor instanceof Anchor.Chip chip) {
      out.chip(chip.number());
    } else {
      out.common(anchor);
    }
  }

  private void registration(Finding.Registration registration) {
    out.chip(registration.chip());
    out.common(registration.registry());
    who(registration.primary());
    out.optional(registration.compared(), this::compared);
  }

  private void compared(Compared compared) {
    out.common(compared.verdict());
    out.common(compared.ground());
    out.number(compared.prior());
    out.each(compared.weights(), out::common);
    out.number(compared.samePerson());
    out.number(compared.sameHousehold());
  }

  private void priority(Priority priority) {
    out.common(priority.band());
    out.number(priority.harm());
    out.each(priority.arithmetic(), out::common);
  }

  private void evidence(Evidence evidence) {
    out.common(evidence.part());
    out.common(evidence.day());
    out.chip(evidence.chip());
    out.common(evidence.saidBy());
    out.common(evidence.source());
    out.text(evidence.key().value());
    out.common(evidence.slot());
    out.common(evidence.firstStated());
    who(evidence.who());
    where(evidence.where());
  }

  /** All of a file have its name in common. */
  private void where(String where) {
    int line = where.lastIndexOf(':') + 1;
    out.common(where.substring(0, line));
    out.text(where.substring(line));
  }

  private void who(Who who) {
    if (who instanceof Who.Person person) {
      out.common(Tag.PERSON);
      person(person);
    } else if (who instanceof Who.Outside outside) {
      out.common(Tag.OUTSIDE);
      out.text(outside.statedName());
    } else {
      out.common(Tag.OTHER);
      out.common(who);
    }
  }

  private void person(Who.Person person) {
    out.reference(person.reference());
    out.common(person.source());
    out.common(person.suppliedBy());
  }
}
