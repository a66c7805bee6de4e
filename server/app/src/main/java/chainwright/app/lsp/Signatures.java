package chainwright.app.lsp;

import chainwright.app.assist.Signature;
import chainwright.app.assist.Signing;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.project.SourceFile;
import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.ParameterInformation;
import org.eclipse.lsp4j.SignatureHelp;
import org.eclipse.lsp4j.SignatureHelpParams;
import org.eclipse.lsp4j.SignatureInformation;
import org.eclipse.lsp4j.jsonrpc.messages.Tuple;

/** {@code textDocument/signatureHelp}: the settings of the stage that is being written. */
final class Signatures {

  private Signatures() {}

  static Optional<SignatureHelp> answer(SignatureHelpParams params, Request request) {
    int offset = request.offsetOf(params.getPosition());
    SourceFile file = request.document().file();
    int index = file.tree().sectionAt(offset);
    return Signing.at(
            Catalogue.load(), file.sections().get(index), offset - file.tree().startOf(index))
        .map(signature -> translated(signature, request.client().takesLabelOffsets()));
  }

  private static SignatureHelp translated(Signature signature, boolean takesOffsets) {
    List<ParameterInformation> parameters =
        signature.parameters().stream()
            .map(
                parameter -> {
                  ParameterInformation made = new ParameterInformation();
                  if (takesOffsets) {
                    made.setLabel(Tuple.two(parameter.start(), parameter.end()));
                  } else {
                    made.setLabel(signature.label().substring(parameter.start(), parameter.end()));
                  }
                  made.setDocumentation(parameter.says());
                  return made;
                })
            .toList();
    SignatureInformation information =
        new SignatureInformation(signature.label(), signature.says(), parameters);
    // Beyond the last where all are written: editors would take nothing for the first.
    int active = signature.active().orElse(parameters.size());
    return new SignatureHelp(List.of(information), 0, active);
  }
}
