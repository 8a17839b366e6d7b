package withers.report.mail;

import java.util.ArrayList;
import java.util.List;
import withers.organisation.Organisation;
import withers.report.list.BandSection;
import withers.report.list.Changed;
import withers.report.list.FollowUpList;
import withers.report.text.Texts;

/**
 * What a mail says that does not hold its list: how much there is to do, and whom to ask for it.
 */
record PlainSummary(FollowUpList list, Organisation coordinator, Texts texts) {

  /**
   * The text.
   *
   * @param why the key of the sentence that says why the list is not in it
   */
  String because(String why) {
    List<String> lines = new ArrayList<>();
    lines.add(texts.say("list.title", list.organisation().name()));
    lines.add(texts.say("list.as-of", texts.date(list.asOf())));
    lines.add("");
    lines.add(texts.say("list.total", list.size()) + ". " + Changed.in(list, texts));
    list.bands().forEach(band -> lines.add(count(band)));
    lines.add("");
    lines.add(texts.say(why, whoHasIt()));
    lines.add(texts.say("mail.answer"));
    lines.add("-- ");
    lines.add(texts.say("list.footer", list.run()));
    return String.join("\n", lines) + "\n";
  }

  private String count(BandSection band) {
    return "%s: %s".formatted(texts.say("band." + band.band().word()), texts.count(band.size()));
  }

  private String whoHasIt() {
    List<String> phones = coordinator.contact().phones();
    return phones.isEmpty()
        ? coordinator.name()
        : "%s (%s)".formatted(coordinator.name(), String.join(", ", phones));
  }
}
