package withers.report.mail;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import withers.organisation.Organisation;
import withers.report.html.Pages;
import withers.report.list.FollowUpList;
import withers.report.mail.Letter.Page;
import withers.report.text.Texts;

/**
 * What brings a list to its reader: the list as text and as a page, the workbook enclosed.
 *
 * @param sheet makes the list's workbook, or has it already
 * @param coordinator who has the lists
 */
record ListLetter(
    FollowUpList list, Supplier<byte[]> sheet, Organisation coordinator, Texts texts) {
  private static final String WORKBOOK_TYPE =
      "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
  private static final String PAGE_TYPE = "text/html; charset=utf-8";

  /** With the list in it. */
  Letter whole() {
    Page page = new Page(new Pages(texts).mailed(list), List.of());
    return letter(PlainList.of(list, texts), Optional.of(page), List.of(workbook()));
  }

  /**
   * Without the list.
   *
   * @param why the key of the sentence that says why
   */
  Letter summary(String why) {
    String text = new PlainSummary(list, coordinator, texts).because(why);
    return letter(text, Optional.empty(), List.of());
  }

  private Letter letter(String text, Optional<Page> page, List<Enclosure> enclosures) {
    String subject =
        texts.say("mail.subject", list.organisation().name(), texts.date(list.asOf()), list.size());
    return new Letter(list.organisation(), list.run(), subject, text, page, enclosures);
  }

  /** The list as a page of its own, for a mail that is about something else. */
  Enclosure page() {
    byte[] page = new Pages(texts).mailed(list).getBytes(StandardCharsets.UTF_8);
    return new Enclosure(name("mail.page"), PAGE_TYPE, page);
  }

  /** The sheet, to be sent back. */
  Enclosure workbook() {
    return new Enclosure(name("mail.file"), WORKBOOK_TYPE, sheet.get());
  }

  private String name(String key) {
    return texts.say(key, list.asOf().toString());
  }
}
