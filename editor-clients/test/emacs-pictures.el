;;; emacs-pictures.el --- Drives Emacs with windows and checks the pictures that it shows  -*- lexical-binding: t; -*-

;;; Commentary:

;; Run by ./emacs-pictures.sh, with keys as a person presses them; what Emacs shows is asked of Emacs.

;;; Code:

(load (expand-file-name "emacs-driver" (file-name-directory load-file-name)) nil t)
(require 'color)

(defconst driver-client (getenv "CLIENT"))
(defconst driver-theme (getenv "THEME"))

(setq inhibit-startup-screen t
      confirm-kill-processes nil
      ring-bell-function #'ignore)
(tool-bar-mode -1)
(when (equal driver-theme "dark")
  (load-theme 'wombat t))
(if (equal driver-client "eglot")
    (add-hook 'chain-mode-hook #'eglot-ensure)
  (require 'lsp-mode)
  (setq lsp-session-file (expand-file-name ".session" driver-folder)
        lsp-auto-guess-root t
        lsp-guess-root-without-session t
        lsp-enable-snippet nil
        lsp-headerline-breadcrumb-enable nil
        lsp-restart 'ignore)
  (add-hook 'chain-mode-hook #'lsp))

;;; As a person would.

(defun driver-await-idle (probe)
  "Return the value of PROBE once it is non-nil, while Emacs waits for keys."
  (let ((end (+ (float-time) driver-patience)) value timer)
    (setq timer (run-with-timer 0.1 0.1
                                (lambda ()
                                  ;; Not while a command still runs, as one that waits for the server.
                                  (when (and (null this-command)
                                             (null unread-command-events)
                                             (or (setq value (funcall probe)) (> (float-time) end)))
                                    (cancel-timer timer)
                                    (throw 'exit nil)))))
    (recursive-edit)
    value))

(defun driver-press (keys &optional probe)
  "Press KEYS, let Emacs do what they say, and return what PROBE then says."
  (setq unread-command-events (listify-key-sequence (kbd keys)))
  (driver-await-idle (or probe #'always)))

(defun driver-command (name)
  "Run the command NAME by M-x."
  (driver-press (concat "M-x " (mapconcat #'char-to-string name " ") " RET")))

(defun driver-connected-p ()
  "Return whether the server manages the current buffer."
  (if (equal driver-client "eglot")
      (bound-and-true-p eglot--managed-mode)
    (and (bound-and-true-p lsp-mode)
         (lsp-workspaces)
         (eq 'initialized (lsp--workspace-status (car (lsp-workspaces)))))))

(defun driver-open (name mark)
  "Show the file NAME alone, managed by the server; step onto MARK from behind it."
  (delete-other-windows)
  (switch-to-buffer (find-file-noselect (expand-file-name name driver-folder)))
  ;; Eglot connects after the first command.
  (driver-press "C-f")
  (driver-await-idle #'driver-connected-p)
  (goto-char (1+ (driver-mark name mark)))
  (driver-press "C-b"))

(defun driver-shoot (name)
  "Leave a picture of the frame, called NAME."
  (redisplay t)
  (let ((coding-system-for-write 'binary))
    (write-region (x-export-frames nil 'png) nil
                  (expand-file-name (format "emacs-%s-%s-%s.png" driver-client driver-theme name) (getenv "SCREENSHOTS"))
                  nil 'quiet)))

;;; What is seen.

(defun driver-pictures (buffer)
  "Return the (POSITION . IMAGE) of each picture that BUFFER shows."
  (with-current-buffer buffer
    (let ((at (point-min)) found)
      (while (< at (point-max))
        (let ((shown (get-text-property at 'display)))
          (when (and (eq (car-safe shown) 'image) (not (invisible-p at)))
            (push (cons at shown) found)))
        (setq at (next-single-property-change at 'display nil (point-max))))
      (nreverse found))))

(defun driver-whole-p (window position)
  "Return whether what stands at POSITION is wholly seen in WINDOW."
  (redisplay t)
  (pcase (pos-visible-in-window-p position window t)
    (`(,_ ,_) t)))

(defun driver-paper (image)
  "Return how light the paper of IMAGE is, from 0 to 1."
  (let ((svg (image-property image :data)))
    (string-match "<rect[^>]*fill=\"\\(#[0-9a-f]+\\)\"" svg)
    (nth 2 (apply #'color-rgb-to-hsl (color-name-to-rgb (match-string 1 svg))))))

(defun driver-suits-p (image)
  "Return whether the paper of IMAGE suits the frame."
  (if (equal driver-theme "dark") (< (driver-paper image) 0.4) (> (driver-paper image) 0.8)))

(defun driver-hover ()
  "The picture in a hover, and the words in the echo area."
  (let (echoed)
    (advice-add 'eldoc-message :before (lambda (&optional text) (when text (push text echoed))))
    (advice-add 'eldoc--message :before (lambda (&optional text) (when text (push text echoed))))
    (driver-open (driver-case 'hover 'file) (driver-case 'hover 'at))
    ;; These keys end no idleness, as those of a keyboard do, so that eldoc's timer may have run out before them.
    (when (equal driver-client "eglot")
      (run-with-timer 0.5 nil #'eldoc-print-current-symbol-info))
    (driver-press "C-f C-b" (lambda () echoed))
    (driver-check "hover: the echo area has the answer and no picture"
                  (and echoed
                       (driver-contains-all (car (split-string (car echoed) "\n")) (driver-case 'hover 'first))
                       (not (string-search "base64" (car echoed))))
                  echoed))
  (driver-command (if (equal driver-client "eglot") "eldoc" "lsp-describe-thing-at-point"))
  (let* ((buffer (lambda () (if (equal driver-client "eglot") (bound-and-true-p eldoc--doc-buffer) (get-buffer "*lsp-help*"))))
         (pictures (lambda () (and (buffer-live-p (funcall buffer))
                                   (get-buffer-window (funcall buffer))
                                   (driver-pictures (funcall buffer)))))
         (found (driver-await-idle pictures))
         (text (and (buffer-live-p (funcall buffer)) (driver-shown (funcall buffer))))
         (window (and found (get-buffer-window (funcall buffer))))
         (wanted (cons (driver-case 'hover 'image 'width) (driver-case 'hover 'image 'height))))
    (driver-check "hover: has one picture" (= 1 (length found)) text)
    (driver-check "hover: says what it should"
                  (and text (cl-every (lambda (part) (string-search part text)) (driver-case 'hover 'shows)))
                  text)
    (pcase-dolist (`(,at . ,image) found)
      (driver-check "hover: Emacs draws it in its size" (equal (image-size image t) wanted) (image-size image t))
      (driver-check "hover: it is seen whole" (driver-whole-p window at) (pos-visible-in-window-p at window t))
      (driver-check "hover: its paper suits the theme" (driver-suits-p image) (driver-paper image))))
  (driver-shoot "hover"))

(defun driver-plots-shown ()
  "Return the text of the window with plots."
  (let ((buffer (get-buffer "*chain plots*")))
    (and buffer (get-buffer-window buffer) (driver-shown buffer))))

(defun driver-check-plots (label says count)
  "Check under LABEL that the window with plots says SAYS above COUNT pictures."
  (let* ((found (driver-await-idle
                 (lambda ()
                   ;; The first line is the chain's name; what is said of the line comes before what is said of the chain.
                   (let ((text (driver-plots-shown)))
                     (and text
                          (string-search says (or (nth 2 (split-string text "\n")) ""))
                          (driver-pictures "*chain plots*"))))))
         (window (get-buffer-window "*chain plots*")))
    (driver-check (concat label ": says what it does") found (driver-plots-shown))
    (driver-check (concat label ": has its pictures") (= count (length found)) (length found))
    (driver-check (concat label ": Emacs draws them no wider than the window")
                  (cl-every (lambda (picture)
                              (let ((size (image-size (cdr picture) t)))
                                (and (<= 300 (car size) (window-body-width window t)) (> (cdr size) 100))))
                            found)
                  (mapcar (lambda (picture) (image-size (cdr picture) t)) found))
    (driver-check (concat label ": the first is seen whole")
                  (and found (driver-whole-p window (caar found)))
                  (and found (pos-visible-in-window-p (caar found) window t)))
    (driver-check (concat label ": their paper suits the theme")
                  (cl-every (lambda (picture) (driver-suits-p (cdr picture))) found)
                  (mapcar (lambda (picture) (driver-paper (cdr picture))) found))))

(defun driver-plot ()
  "The window beside the text."
  (let* ((name (driver-case 'plot 'file))
         (lines (driver-case 'plot 'lines))
         (edit (driver-case 'plot 'edit)))
    (driver-open name (alist-get 'at (car lines)))
    (driver-command "chain-plots")
    (dolist (line lines)
      (goto-char (1+ (driver-mark name (alist-get 'at line))))
      (driver-press "C-b")
      (driver-check-plots (format "plots of %s" (alist-get 'at line)) (alist-get 'says line) (alist-get 'pictures line))
      (driver-shoot (format "plots-%s" (alist-get 'at line))))
    (goto-char (driver-mark name (alist-get 'at edit)))
    (driver-press (alist-get 'typed edit))
    (driver-check "plots: follow an edit"
                  (driver-await-idle (lambda () (string-search (alist-get 'says edit) (driver-plots-shown))))
                  (driver-plots-shown))
    (driver-press "C-x o q")
    (driver-check "plots: q closes their window"
                  (not (get-buffer-window "*chain plots*")) (window-list))
    (driver-press "C-f")
    (driver-check "plots: are not asked for once the window is closed"
                  (not (memq 'chain-plots--follow post-command-hook)) post-command-hook)))

(defun driver-go ()
  "Run all checks; what they say goes into the file that $SAID names."
  (set-frame-size nil 150 52)
  (let ((standard-output (find-file-noselect (getenv "SAID"))))
    (driver-run '((hover . driver-hover) (plot . driver-plot)))
    (driver-say "%d passed, %d failed" driver-passed driver-failed)
    (with-current-buffer standard-output
      (save-buffer)))
  (driver-end))

(add-hook 'window-setup-hook #'driver-go)
;;; emacs-pictures.el ends here
