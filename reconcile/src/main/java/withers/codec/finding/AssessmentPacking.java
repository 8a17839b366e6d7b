package withers.codec.finding;

import java.util.HashSet;
import withers.finding.FindingKind;
import withers.finding.NotJudged;
import withers.id.OrganisationId;
import withers.packed.Packer;
import withers.packed.Packing;
import withers.packed.Unpacker;
import withers.rule.Assessment;

/**
 * What the rules say about an animal, in a fraction of the room: a run holds what it found until it
 * is written, and it finds more than anything else that it holds.
 */
public final class AssessmentPacking implements Packing<Assessment> {

  @Override
  public void pack(Assessment value, Packer out) {
    FindingPacker findings = new FindingPacker(out);
    out.each(value.chips(), out::chip);
    out.optional(value.finding(), findings::finding);
    out.each(value.undecided(), out::common);
    out.each(value.notJudged(), one -> pack(one, out));
    out.optional(value.question(), findings::question);
    out.each(value.settled(), findings::finding);
  }

  private static void pack(NotJudged lack, Packer out) {
    out.chip(lack.anchor());
    out.common(lack.registry());
    out.common(lack.reason());
  }

  @Override
  public Assessment unpack(Unpacker in) {
    FindingUnpacker findings = new FindingUnpacker(in);
    return new Assessment(
        in.each(in::chip),
        in.optional(findings::finding),
        new HashSet<>(in.each(() -> in.common(FindingKind.class))),
        new HashSet<>(in.each(() -> lack(in))),
        in.optional(findings::question),
        in.each(findings::finding));
  }

  private static NotJudged lack(Unpacker in) {
    return new NotJudged(
        in.chip(), in.common(OrganisationId.class), in.common(NotJudged.Reason.class));
  }
}
