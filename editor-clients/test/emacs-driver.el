;;; emacs-driver.el --- What the drivers of Emacs have in common  -*- lexical-binding: t; -*-

;;; Commentary:

;; Loaded by emacs.el, emacs-lsp.el and emacs-pictures.el.

;;; Code:

(require 'cl-lib)
(require 'json)
(require 'package)
;; Debian's packages of Emacs Lisp are found so, as at any start that reads an init file.
(package-initialize)

(defconst driver-here (file-name-directory load-file-name))

;; The set-up that the README of ../emacs gives.
(add-to-list 'load-path (expand-file-name "../emacs" driver-here))
(require 'chain-mode)
(setq chain-server-command (list (getenv "CHAINWRIGHT") "lsp"))

(setq make-backup-files nil
      auto-save-default nil
      create-lockfiles nil)

(defconst driver-patience
  (/ (string-to-number (or (getenv "PATIENCE_MS") "20000")) 1000.0)
  "Seconds to wait for what must come.")

(defconst driver-cases
  (let ((json-object-type 'alist) (json-array-type 'list) (json-key-type 'symbol))
    (json-read-file (or (getenv "CASES") (expand-file-name "cases.json" driver-here)))))

(defun driver-case (&rest path)
  "Return what the data file holds under PATH."
  (let ((at driver-cases))
    (dolist (key path at)
      (setq at (alist-get key at)))))

;;; Saying what was seen.

(defvar driver-passed 0)
(defvar driver-failed 0)

(defun driver-say (line &rest arguments)
  "Write LINE, formatted with ARGUMENTS, to standard output."
  (princ (concat (apply #'format line arguments) "\n")))

(defun driver-check (name holds seen)
  "Count the check NAME as passed where HOLDS, and print SEEN otherwise."
  (if holds
      (progn (cl-incf driver-passed) (driver-say "ok      %s" name))
    (cl-incf driver-failed)
    (driver-say "FAILED  %s: %S" name seen)))

(defun driver-await (probe)
  "Return the value of PROBE once it is non-nil; nil when patience runs out."
  (let ((end (+ (float-time) driver-patience)) value)
    (while (and (not (setq value (funcall probe))) (< (float-time) end))
      (accept-process-output nil 0.05))
    value))

(defun driver-contains-all (text wanted)
  "Return whether TEXT contains every string of WANTED."
  (and (stringp text)
       (cl-every (lambda (part) (string-search part text)) wanted)))

;;; The fixture folder.

(defvar driver-folder (file-name-as-directory (file-truename (make-temp-file "chain-fixture" t))))
(defvar driver-marks nil "Buffer positions by (FILE . MARK).")

(defun driver-lay-out ()
  "Write the fixture files without their markers, and remember where these stood."
  (dolist (file (driver-case 'files))
    (let ((name (symbol-name (car file))) (coding-system-for-write 'utf-8-unix))
      (with-temp-buffer
        (insert (cdr file))
        (goto-char (point-min))
        (while (re-search-forward "<|\\([a-z-]+\\)|>" nil t)
          (let ((mark (match-string 1)))
            (replace-match "")
            (push (cons (cons name mark) (point)) driver-marks)))
        (write-region nil nil (expand-file-name name driver-folder) nil 'quiet)))))

(defun driver-mark (name mark)
  "Return the buffer position of MARK in file NAME."
  (cdr (assoc (cons name mark) driver-marks)))

(defun driver-line ()
  "Return the text of the current line."
  (buffer-substring-no-properties (line-beginning-position) (line-end-position)))

(defun driver-shown (buffer)
  "Return the visible text of BUFFER."
  (with-current-buffer buffer
    (let ((at (point-min)) (parts nil))
      (while (< at (point-max))
        (let ((next (next-single-char-property-change at 'invisible)))
          (unless (invisible-p at)
            (push (buffer-substring-no-properties at next) parts))
          (setq at next)))
      (apply #'concat (nreverse parts)))))

;;; Checks that need a client's `driver-open'.

(defun driver-candidates ()
  "Return the words that the *Completions* buffer lists."
  (when (get-buffer "*Completions*")
    (with-current-buffer "*Completions*"
      (let ((at (point-min)) (words nil))
        (while (< at (point-max))
          (let ((next (next-single-property-change at 'mouse-face nil (point-max))))
            (when (get-text-property at 'mouse-face)
              ;; An annotation follows the word after a space; both may have the same face.
              (push (string-trim (buffer-substring-no-properties at next)) words))
            (setq at next)))
        (delete-dups (nreverse words))))))

(defun driver-complete (case)
  "What completion offers at the place of CASE, and what accepting writes."
  (let ((file (alist-get 'file case)) (at (alist-get 'at case)) (name (alist-get 'name case)))
    (when (get-buffer "*Completions*")
      (kill-buffer "*Completions*"))
    (driver-open file at)
    (completion-help-at-point)
    (let ((words (driver-candidates)) (accept (alist-get 'accept case)))
      (dolist (word (alist-get 'offers case))
        (driver-check (format "completion of %s: offers %s" name word) (member word words) words))
      (dolist (word (alist-get 'withholds case))
        (driver-check (format "completion of %s: withholds %s" name word)
                      (and words (not (member word words))) words))
      ;; Choosing in *Completions* is what a click or RET on the word does.
      (when (get-buffer "*Completions*")
        (select-window (get-buffer-window "*Completions*"))
        (goto-char (point-min))
        (when (search-forward accept nil t)
          (goto-char (match-beginning 0))
          (choose-completion))))
    (switch-to-buffer (find-file-noselect (expand-file-name file driver-folder)))
    (goto-char (driver-mark file at))
    (driver-check (format "completion of %s: accepting writes the word" name)
                  (equal (driver-line) (alist-get 'line-after case))
                  (driver-line))))

(defun driver-completion ()
  "What completion at point offers, and what accepting writes."
  (dolist (case (driver-case 'completion))
    (driver-complete case)))

(defun driver-choose-fix (command)
  "Check that COMMAND offers the fix of the cases, and choose it."
  (let ((title (driver-case 'fix 'title)) (shown nil))
    (cl-letf (((symbol-function 'completing-read)
               (lambda (_prompt collection &rest _)
                 (setq shown (all-completions "" collection))
                 (or (cl-find-if (lambda (label) (string-search title label)) shown)
                     (error "No action %S" title)))))
      (condition-case trouble
          (call-interactively command)
        (error (driver-say "        %S" trouble))))
    (driver-check "fix: is offered"
                  (cl-some (lambda (label) (string-search title label)) shown)
                  shown)))

(defun driver-check-rename (section rename)
  "Rename as SECTION of the cases says, by the command RENAME, and check the lines after."
  (driver-open (driver-case section 'file) (driver-case section 'at))
  ;; A client may ask before it edits a file that is not yet open.
  (cl-letf (((symbol-function 'y-or-n-p) #'always))
    (funcall rename (driver-case section 'to)))
  (dolist (wanted (driver-case section 'lines-after))
    (let* ((buffer (find-buffer-visiting (expand-file-name (symbol-name (car wanted)) driver-folder)))
           (text (and buffer (with-current-buffer buffer (buffer-string))))
           (lines (if (listp (cdr wanted)) (cdr wanted) (list (cdr wanted)))))
      (driver-check (format "%s: reaches %s" section (car wanted))
                    (and text (cl-every (lambda (line) (member line (split-string text "\n"))) lines))
                    text))))

;;; A whole run.

(defun driver-run (checks)
  "Run CHECKS, a list of (SECTION . FUNCTION), each if the cases have its section."
  (pcase-dolist (`(,section . ,check) checks)
    (if (not (driver-case section))
        (driver-say "--      %s: not in the cases" section)
      (condition-case trouble
          (funcall check)
        ((error quit) (driver-check (format "%s: runs to its end" section) nil trouble))))))

(defun driver-end ()
  "Say how many checks passed, and end Emacs."
  (driver-say "%d passed, %d failed" driver-passed driver-failed)
  (delete-directory driver-folder t)
  (dolist (buffer (buffer-list))
    (with-current-buffer buffer (set-buffer-modified-p nil)))
  (kill-emacs (if (and (zerop driver-failed) (> driver-passed 0)) 0 1)))

(driver-lay-out)

(provide 'emacs-driver)
;;; emacs-driver.el ends here
