;;; chain-plots.el --- Pictures of what a chain does, in hovers and beside the text  -*- lexical-binding: t; -*-

;; SPDX-License-Identifier: Apache-2.0

;;; Commentary:

;; Loaded by chain-mode where it is needed.

;;; Code:

(require 'image)
(require 'seq)
(require 'subr-x)

;;; Pictures.

(defun chain-plots-drawable-p ()
  "Return whether the selected frame shows the server's pictures."
  (and (display-images-p) (image-type-available-p 'svg)))

(defun chain-plots-theme ()
  "Return the server's word for inks and paper that suit the selected frame."
  (if (eq (frame-parameter nil 'background-mode) 'dark) "dark" "light"))

(defun chain-plots--properties (svg says width)
  "Return the text properties that show the picture SVG.
It is no wider than WIDTH pixels; SAYS tells of it where the mouse rests."
  (let ((image (create-image svg 'svg t
                             :max-width width
                             ;; Emacs would put the text's font into it, and labels would run into each other.
                             :css "svg { font-family: sans-serif }")))
    ;; A hover's picture is made small for those who have a small box for it; here is room for its own size.
    (when (string-match "viewBox=\"0 0 \\([0-9]+\\)" svg)
      (setf (image-property image :width) (string-to-number (match-string 1 svg))))
    (list 'display image 'help-echo says 'chain-plot t)))

;;; In hovers.

(defconst chain-plots--embedded
  "!\\[\\(\\(?:\\\\.\\|[^]\\\\]\\)*\\)\\](data:image/svg\\+xml;base64,\\([[:alnum:]+/=]+\\))"
  "An SVG picture within Markdown: what it says, and its bytes.")

(defun chain-plots-draw-hover (limit)
  "Show the pictures from point to LIMIT, as a matcher of font-lock; return nil."
  (when (chain-plots-drawable-p)
    (with-silent-modifications
      (while (re-search-forward chain-plots--embedded limit t)
        ;; What Markdown's own rules have hidden is shown again.
        (set-text-properties
         (match-beginning 0) (match-end 0)
         (chain-plots--properties (base64-decode-string (match-string-no-properties 2))
                                  (match-string-no-properties 1)
                                  (frame-text-width))))))
  nil)

(defun chain-plots--before-pictures (doc)
  "Return DOC, one of eldoc's, as far as its first picture."
  (if-let ((picture (text-property-any 0 (length (car doc)) 'chain-plot t (car doc))))
      (cons (string-trim-right (substring (car doc) 0 picture)) (cdr doc))
    doc))

(defun chain-plots-display-in-echo-area (docs interactive)
  "Display DOCS in the echo area as eldoc does, but for the pictures.
They would push the words out of it.  INTERACTIVE is eldoc's."
  (eldoc-display-in-echo-area (mapcar #'chain-plots--before-pictures docs) interactive))

;;; Beside the text.

(defconst chain-plots--buffer "*chain plots*")

(defvar chain-plots--timer nil "Fires when point has rested.")

(defvar-local chain-plots--shown nil "The answer that is shown, and the width in pixels that it was drawn for.")

(declare-function eglot-current-server "eglot")
(declare-function eglot--TextDocumentPositionParams "eglot")
(declare-function jsonrpc-async-request "jsonrpc")
(declare-function lsp-request-async "lsp-mode")
(declare-function lsp--text-document-position-params "lsp-mode")

(defun chain-plots--get (key object)
  "Return what OBJECT of an answer holds under KEY, a keyword."
  (if (hash-table-p object)
      (gethash (substring (symbol-name key) 1) object)
    (plist-get object key)))

(defun chain-plots--ask (show)
  "Ask the server for the plots at point, and call SHOW with its answer."
  (let ((asked (lambda (place)
                 (list :command "chainwright.plot"
                       :arguments (vector (append place (list :theme (chain-plots-theme))))))))
    (cond
     ((and (fboundp 'eglot-current-server) (eglot-current-server))
      (jsonrpc-async-request
       (eglot-current-server) :workspace/executeCommand
       (funcall asked (eglot--TextDocumentPositionParams))
       ;; Not before the server has been told of the latest edit.
       :deferred :chain-plots
       :success-fn show
       ;; An answer that an edit has overtaken is refused; the edit has asked again.
       :error-fn #'ignore))
     ((bound-and-true-p lsp-mode)
      (lsp-request-async
       "workspace/executeCommand"
       (funcall asked (lsp--text-document-position-params))
       show
       :mode 'tick :error-handler #'ignore :cancel-token :chain-plots))
     (t (user-error "No language server runs for this buffer: start `eglot' or `lsp'")))))

(defun chain-plots--insert (answer width)
  "Insert what ANSWER shows, with pictures no wider than WIDTH pixels."
  (if (null answer)
      (insert "Nothing to draw at this place.\n")
    (insert (propertize (chain-plots--get :name answer) 'face 'bold) "\n")
    (seq-do
     (lambda (part)
       (insert "\n" (chain-plots--get :says part) "\n")
       (seq-do
        (lambda (plot)
          (let ((says (chain-plots--get :says plot)))
            (insert "\n"
                    (if (chain-plots-drawable-p)
                        (apply #'propertize says (chain-plots--properties (chain-plots--get :svg plot) says width))
                      says)
                    "\n")))
        (chain-plots--get :plots part)))
     (chain-plots--get :parts answer))))

(defun chain-plots--show (answer)
  "Show ANSWER in the window beside the text, if it is still there."
  (when-let ((window (get-buffer-window chain-plots--buffer 'visible)))
    (with-current-buffer chain-plots--buffer
      (let ((drawn (list answer (window-body-width window t)))
            (inhibit-read-only t))
        ;; The same again would lose the reader's place.
        (unless (equal drawn chain-plots--shown)
          (setq chain-plots--shown drawn)
          (erase-buffer)
          (chain-plots--insert answer (cadr drawn))
          (set-window-point window (point-min))
          (set-window-start window (point-min)))))))

(defun chain-plots--follow ()
  "Show the plots at point once it has rested."
  (if (not (get-buffer-window chain-plots--buffer 'visible))
      (remove-hook 'post-command-hook #'chain-plots--follow t)
    (when (timerp chain-plots--timer)
      (cancel-timer chain-plots--timer))
    (let ((buffer (current-buffer)))
      (setq chain-plots--timer
            (run-with-idle-timer
             0.1 nil
             (lambda ()
               (when (eq buffer (window-buffer))
                 (with-current-buffer buffer
                   (ignore-errors (chain-plots--ask #'chain-plots--show))))))))))

(define-derived-mode chain-plots-mode special-mode "Plots"
  "Major mode of the window that shows the plots of a chain."
  (setq-local cursor-type nil)
  (visual-line-mode 1))

(defun chain-plots--place ()
  "Return where the window goes, as an action for `display-buffer'.
That is beside the text where a picture has room there, else below it."
  (let* ((column (frame-char-width))
         ;; A picture of the server is 560 pixels wide, drawn larger where letters are larger than usual.
         (columns (ceiling (* 580 (max 1.0 (/ column 10.0))) column)))
    (if (>= (- (window-total-width) columns) 60)
        `((display-buffer-reuse-window display-buffer-in-direction)
          (direction . right) (window-width . ,(+ columns 2)) (dedicated . t))
      '((display-buffer-reuse-window display-buffer-below-selected) (dedicated . t)))))

;;;###autoload
(defun chain-plots ()
  "Show the plots of the line at point and of its chain.
Their window follows point in each buffer that this command was called in,
for as long as it is there; `q' in it closes it."
  (interactive)
  (with-current-buffer (get-buffer-create chain-plots--buffer)
    (unless (derived-mode-p 'chain-plots-mode)
      (chain-plots-mode)))
  (chain-plots--ask #'chain-plots--show)
  (display-buffer chain-plots--buffer (chain-plots--place))
  (add-hook 'post-command-hook #'chain-plots--follow nil t))

(provide 'chain-plots)
;;; chain-plots.el ends here
