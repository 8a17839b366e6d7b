package withers.demo;

import static withers.demo.Role.PERSON;

/** The columns of the network's lost and found reports. */
final class ReportLayouts {

  private ReportLayouts() {}

  static Columns lostAndFound(Columns columns) {
    return columns
        .text("Report", Field.KEY)
        .text("Type", Field.REPORT)
        .day("Date", Field.DAY)
        .text("Chip", Field.CHIP)
        .text("Animal", Field.NAME)
        .word("Kind", Field.SPECIES, Words.SPECIES_CAPITALS)
        .text("With", Field.ORG)
        .fullName("Reported by", PERSON)
        .phone("Phone", PERSON)
        .day("Gone home on", Field.REUNITED);
  }
}
