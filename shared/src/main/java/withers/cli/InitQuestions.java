package withers.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import withers.organisation.OrganisationKind;
import withers.workspace.FirstSchedule;
import withers.workspace.Member;
import withers.workspace.NewWorkspace;
import withers.yaml.Choices;
import withers.yaml.Values;

/** What {@code init} asks the person at the terminal. */
record InitQuestions(Conversation conversation) {

  /**
   * Asks for everything that a new network has to say.
   *
   * @param usual what counts where Enter is pressed
   */
  NewWorkspace ask(NewWorkspace usual) {
    return new NewWorkspace(
        conversation.ask(
            "The network's name, as lists and mails show it",
            usual.network(),
            NewWorkspace::network),
        conversation.ask(
            "Its time zone, such as Europe/Lisbon", usual.zone().getId(), Values::zone),
        conversation.ask(
            "The country whose rules read phones without a country code, ZZ for none",
            usual.phoneRegion(),
            NewWorkspace::region),
        conversation.ask("Language of lists and mails", usual.language(), NewWorkspace::language),
        usual.testNumbers(),
        conversation.ask(
            "The mail address that the overview goes to, nothing for none",
            "",
            text -> optional(text).map(NewWorkspace::mail)),
        members(),
        conversation.ask(
            "What is to happen by itself: none, nightly (exports are read and lists made) or monthly (exports each night, lists on the first)",
            Choices.name(FirstSchedule.NONE),
            text -> Choices.read(FirstSchedule.class, text)));
  }

  private List<Member> members() {
    List<Member> members = new ArrayList<>();
    String question =
        "Who sends exports? One at a time, as KIND NAME <MAIL>: clinic Harbour Clinic <lists@harbour.example.org>. Nothing when that is all";
    Optional<Member> next = conversation.ask(question, "", InitQuestions::member);
    while (next.isPresent()) {
      members.add(next.get());
      next = conversation.ask("And who else", "", InitQuestions::member);
    }
    return members;
  }

  private static Optional<Member> member(String text) {
    return optional(text)
        .map(typed -> typed.split("\\s+", 2))
        .map(
            words ->
                Member.parse(
                    Choices.read(OrganisationKind.class, words[0]),
                    words.length > 1 ? words[1] : ""));
  }

  private static Optional<String> optional(String text) {
    return Optional.of(text).filter(typed -> !typed.isEmpty());
  }
}
