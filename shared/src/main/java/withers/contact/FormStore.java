package withers.contact;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What was made of contacts, kept beside the vault so that it need not be made again by every run.
 * Disposable: what is damaged, or can't be read at all, counts as not kept, and nothing here fails
 * because of it. Safe for several threads; one process writes at a time.
 */
public interface FormStore extends AutoCloseable {

  /** What is kept of some contacts. */
  final class Kept {
    private final Map<ContactRef, byte[]> current = new HashMap<>();
    private final Map<ContactRef, byte[]> outdated = new HashMap<>();

    /** What the maker of today made. */
    public Map<ContactRef, byte[]> current() {
      return current;
    }

    /** What another maker made, to be compared with what is made now. */
    public Map<ContactRef, byte[]> outdated() {
      return outdated;
    }
  }

  /** What is kept of these contacts, of those of which anything is. */
  Kept find(Collection<ContactRef> references);

  /** Keeps what was made of contacts, in place of what was kept of them. */
  void keep(Map<ContactRef, byte[]> forms);

  /** What went wrong so far, in sentences for people, without details of anyone. */
  List<String> troubles();

  @Override
  void close();

  /** Keeps nothing. */
  FormStore NONE =
      new FormStore() {
        @Override
        public Kept find(Collection<ContactRef> references) {
          return new Kept();
        }

        @Override
        public void keep(Map<ContactRef, byte[]> forms) {}

        @Override
        public List<String> troubles() {
          return List.of();
        }

        @Override
        public void close() {}
      };
}
