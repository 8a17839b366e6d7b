package withers.codec.finding;

import java.time.LocalDate;
import withers.cases.Anchor;
import withers.fact.Slot;
import withers.fact.Species;
import withers.finding.Band;
import withers.finding.Compared;
import withers.finding.Detail;
import withers.finding.Evidence;
import withers.finding.Finding;
import withers.finding.FindingKind;
import withers.finding.OpenQuestion;
import withers.finding.Priority;
import withers.finding.Who;
import withers.id.OrganisationId;
import withers.id.RecordKey;
import withers.id.SourceId;
import withers.matching.Ground;
import withers.matching.Verdict;
import withers.packed.Unpacker;

/** Reads findings and questions as {@link FindingPacker} wrote them. */
record FindingUnpacker(Unpacker in) {

  Finding finding() {
    return new Finding(
        in.common(FindingKind.class),
        anchor(),
        in.each(in::chip),
        in.common(Species.class),
        in.optional(in::text),
        in.common(OrganisationId.class),
        in.optional(this::key),
        who(),
        in.each(this::registration),
        in.each(() -> in.common(String.class)),
        in.common(Finding.Certainty.class),
        priority(),
        in.each(this::evidence),
        in.optional(() -> in.common(Detail.class)));
  }

  OpenQuestion question() {
    return new OpenQuestion(
        in.each(in::chip),
        in.common(Species.class),
        in.optional(in::text),
        in.common(OrganisationId.class),
        key(),
        person(),
        in.common(LocalDate.class),
        in.each(this::registration));
  }

  private Anchor anchor() {
    return in.flag() ? new Anchor.Chip(in.chip()) : in.common(Anchor.class);
  }

  private RecordKey key() {
    return new RecordKey(in.text());
  }

  private Finding.Registration registration() {
    return new Finding.Registration(
        in.chip(), in.common(OrganisationId.class), who(), in.optional(this::compared));
  }

  private Compared compared() {
    return new Compared(
        in.common(Verdict.class),
        in.common(Ground.class),
        in.number(),
        in.each(() -> in.common(Compared.Weight.class)),
        in.number(),
        in.number());
  }

  private Priority priority() {
    return new Priority(
        in.common(Band.class), in.number(), in.each(() -> in.common(Priority.Factor.class)));
  }

  private Evidence evidence() {
    return new Evidence(
        in.common(Evidence.Part.class),
        in.common(LocalDate.class),
        in.chip(),
        in.common(OrganisationId.class),
        in.common(SourceId.class),
        key(),
        in.common(Slot.class),
        in.common(LocalDate.class),
        who(),
        in.common(String.class) + in.text());
  }

  private Who who() {
    return switch (in.common(FindingPacker.Tag.class)) {
      case PERSON -> person();
      case OUTSIDE -> new Who.Outside(in.text());
      case OTHER -> in.common(Who.class);
    };
  }

  private Who.Person person() {
    return new Who.Person(
        in.reference(), in.common(SourceId.class), in.common(OrganisationId.class));
  }
}
