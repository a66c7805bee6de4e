;;; letters.el --- Writes FOLDER/N.letters for FOLDER/N.chain  -*- lexical-binding: t; -*-

;;; Commentary:

;; A letter a character, by the face that chain-mode gives it.

;;; Code:

(add-to-list 'load-path (getenv "MODE"))
(require 'chain-mode)

(defconst letters
  '((font-lock-keyword-face . ?S) (font-lock-variable-name-face . ?s) (font-lock-function-name-face . ?N)
    (font-lock-constant-face . ?n) (chain-unit . ?u) (font-lock-string-face . ?t) (font-lock-doc-face . ?o)
    (font-lock-comment-face . ?c) (chain-punctuation . ?p)))

(set-language-environment "UTF-8")
(dotimes (index (string-to-number (getenv "FILES")))
  (let ((name (expand-file-name (format "%d.chain" index) (getenv "FOLDER"))) text)
    (with-temp-buffer
      (let ((coding-system-for-read 'utf-8-unix))
        (insert-file-contents name))
      (chain-mode)
      (font-lock-ensure)
      (goto-char (point-min))
      (while (not (eobp))
        (push (if (eolp) ?\n (or (alist-get (get-text-property (point) 'face) letters) ?.)) text)
        (forward-char)))
    (with-temp-file (concat (file-name-sans-extension name) ".letters")
      (insert (apply #'string (nreverse text))))))

;;; letters.el ends here
