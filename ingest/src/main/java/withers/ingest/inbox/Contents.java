package withers.ingest.inbox;

import java.util.ArrayList;
import java.util.List;
import withers.ingest.profile.SourceProfile;

/**
 * What lies in an inbox.
 *
 * @param files in the order of their paths
 * @param passedOver paths of what is never read: hidden and half-copied files
 * @param left messages about what stays where it is until somebody does something
 * @param refusals messages about what must not be read
 */
public record Contents(
    List<InboxFile> files, List<String> passedOver, List<String> left, List<String> refusals) {

  public Contents {
    files = List.copyOf(files);
    passedOver = List.copyOf(passedOver);
    left = List.copyOf(left);
    refusals = List.copyOf(refusals);
  }

  /** What may be of one source: what lies in its folder, and what its patterns recognise. */
  public Contents of(SourceProfile profile) {
    return new Contents(
        files.stream().filter(file -> isOf(profile, file)).toList(), passedOver, left, refusals);
  }

  private static boolean isOf(SourceProfile profile, InboxFile file) {
    return file.source()
        .map(source -> source.id().equals(profile.id()))
        .orElseGet(() -> profile.recognises(file.path().getFileName().toString()));
  }

  /** The same with these files only, and more messages about what is left. */
  Contents with(List<InboxFile> files, List<String> moreLeft) {
    List<String> all = new ArrayList<>(left);
    all.addAll(moreLeft);
    return new Contents(files, passedOver, all, refusals);
  }
}
